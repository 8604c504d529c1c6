using System.Globalization;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Household;
using FermentWatch.Kinetics.Temperature;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Kitchen.Forecasts;

/// <summary>
/// What this household's finished jars taught: this kitchen's rate and this household's taste, for the tasting day of the next.
/// Derived from the records and the means alone; what is kept in memory only spares working it out again.
/// </summary>
public sealed class HouseholdLessons(IReadingLog log)
{
    /// <summary>The newest jars say most of the kitchen as it is; this project's own choice.</summary>
    private const int JarsLearnedFrom = 12;

    /// <summary>How many of the jars that ended last are looked at: enough that some which taught nothing leave as many as are learned from.</summary>
    public const int EndedJarsAsked = 3 * JarsLearnedFrom;

    private readonly Dictionary<Guid, (string Name, JarLesson Lesson)> _lessons = [];
    private string? _seen;
    private HouseholdPrior? _prior;

    /// <summary>The prior of the next jar; null while no finished jar taught anything.</summary>
    /// <param name="jars">The jars that ended last, and those that are kept.</param>
    /// <param name="places">Every place.</param>
    /// <param name="sensors">Every sensor.</param>
    /// <param name="meansRevision">Revision of the quarter-hour means.</param>
    /// <param name="cancellationToken">Gives up between two jars.</param>
    public async Task<HouseholdPrior?> ReadAsync(
        IReadOnlyList<Jar> jars, IReadOnlyDictionary<Guid, Place> places, IReadOnlyList<Sensor> sensors, long meansRevision, CancellationToken cancellationToken)
    {
        var teachers = jars.Select(jar => (Jar: jar, Done: DoneAt(jar))).Where(each => each.Done is not null)
            .Select(each => (each.Jar, Done: each.Done!.Value))
            .OrderByDescending(each => each.Done).ThenBy(each => each.Jar.Number).Take(JarsLearnedFrom).ToList();
        string seen = string.Join(';', teachers.Select(each => ForecastInputs.OwnText(each.Jar))
            .Append(ForecastInputs.SharedText(places.Values, sensors)).Append(meansRevision.ToString(CultureInfo.InvariantCulture)));
        if (seen == _seen)
            return _prior;
        _prior = teachers.Count == 0 ? null : HouseholdPrior.From(await LearnAsync(teachers, places, sensors, cancellationToken));
        _seen = seen;
        return _prior;
    }

    private async Task<List<JarLesson>> LearnAsync(
        List<(Jar Jar, Instant Done)> teachers, IReadOnlyDictionary<Guid, Place> places, IReadOnlyList<Sensor> sensors, CancellationToken cancellationToken)
    {
        Instant from = QuarterHour.Floor(teachers.Min(each => each.Jar.PackedAt)), until = QuarterHour.Floor(teachers.Max(each => each.Done));
        TemperatureHistory history = await TemperatureHistory.ReadAsync(log, sensors, from, until, cancellationToken);
        var lessons = new List<JarLesson>();
        foreach ((Jar jar, Instant done) in teachers)
        {
            cancellationToken.ThrowIfCancellationRequested();
            lessons.Add(LessonOf(jar, QuarterHour.Floor(done), places, history));
        }
        foreach (Guid gone in _lessons.Keys.Except(teachers.Select(each => each.Jar.Id)).ToList())
            _lessons.Remove(gone);
        return lessons;
    }

    private JarLesson LessonOf(Jar jar, Instant done, IReadOnlyDictionary<Guid, Place> places, TemperatureHistory history)
    {
        Instant origin = QuarterHour.Floor(jar.PackedAt);
        double days = Math.Max(QuarterHour.Days(origin, done), TemperatureCourse.StepDays);
        ForecastRequest request = JarForecaster.Request(jar, Surroundings.Of(jar, places, history, done, days), days);
        string name = ForecastInputs.Hash($"{ForecastInputs.OwnText(jar)}|{CourseText(request.Temperatures)}");
        if (!_lessons.TryGetValue(jar.Id, out var known) || known.Name != name)
            _lessons[jar.Id] = known = (name, Forecaster.Learn(request));
        return known.Lesson;
    }

    /// <summary>When its ferment was over; null where it teaches nothing: still working, thrown out, spoiled on the way, or never tasted nor measured.</summary>
    private static Instant? DoneAt(Jar jar)
    {
        var standing = jar.Standing.ToList();
        StageChange? done = standing.OfType<StageChange>().FirstOrDefault();
        bool wentWell = standing.All(each => each is not StageChange { Stage: JarStage.ThrownOut } and not Sighting { Kind: not SightingKind.Gas });
        bool saidSomething = done is not null && standing.Any(each => each is PhMeasurement or Taste && each.At <= done.At);
        return done is { Stage: JarStage.Cold or JarStage.Finished } && wentWell && saidSomething && done.At > jar.PackedAt ? done.At : null;
    }

    private static string CourseText(TemperatureCourse course) => string.Join(',', Enumerable.Range(0, course.Count)
        .Select(step => string.Create(CultureInfo.InvariantCulture, $"{course[step].Celsius:R}/{course[step].SpreadCelsius:R}")));
}
