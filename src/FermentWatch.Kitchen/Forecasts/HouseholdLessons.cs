using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Household;
using FermentWatch.Kinetics.Temperature;
using FermentWatch.Kitchen.Health;
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

    /// <summary>How many of the jars that ended last are looked at: enough that some which taught nothing leave as many as are learned
    /// from.</summary>
    public const int EndedJarsAsked = 3 * JarsLearnedFrom;

    private readonly Dictionary<Guid, (string Name, JarLesson Lesson)> _lessons = [];

    /// <summary>The prior of the next jar; null while no finished jar taught anything.</summary>
    /// <param name="jars">The jars that ended last, and those that are kept.</param>
    /// <param name="places">Every place.</param>
    /// <param name="sensors">Every sensor.</param>
    /// <param name="run">Where a jar goes of which nothing can be learned because its record cannot be digested.</param>
    /// <param name="cancellationToken">Gives up between two jars.</param>
    public async Task<HouseholdPrior?> ReadAsync(
        IReadOnlyList<Jar> jars, IReadOnlyDictionary<Guid, Place> places, IReadOnlyList<Sensor> sensors,
        SetAside.SetAsideRun run, CancellationToken cancellationToken)
    {
        var teachers = jars.Select(jar => (Jar: jar, Done: DoneAt(jar))).Where(each => each.Done is not null)
            .Select(each => (each.Jar, Done: QuarterHour.Floor(each.Done!.Value)))
            .OrderByDescending(each => each.Done).ThenBy(each => each.Jar.Number).Take(JarsLearnedFrom).ToList();
        foreach (Guid gone in _lessons.Keys.Except(teachers.Select(each => each.Jar.Id)).ToList())
            _lessons.Remove(gone);
        var means = new MeansOfJars(log, sensors);
        foreach ((Jar jar, Instant done) in teachers)
        {
            cancellationToken.ThrowIfCancellationRequested();
            await run.TryAsync($"what jar {jar.Number} teaches", () => RefreshAsync(jar, done, places, means, cancellationToken));
        }
        return _lessons.Count == 0 ? null : HouseholdPrior.From(_lessons.Values.Select(each => each.Lesson));
    }

    private async Task RefreshAsync(
        Jar jar, Instant done, IReadOnlyDictionary<Guid, Place> places, MeansOfJars means, CancellationToken cancellationToken)
    {
        string name = ForecastInputs.Hash($"{ForecastInputs.OwnText(jar, places)}\n{await means.NameAsync(jar, done, cancellationToken)}");
        if (_lessons.TryGetValue(jar.Id, out var known) && known.Name == name)
            return;
        _lessons.Remove(jar.Id);
        if (NoForecast.Of(jar) is not null)
            return;
        _lessons[jar.Id] = (name, await LearnAsync(jar, done, places, means, cancellationToken));
    }

    private async Task<JarLesson> LearnAsync(
        Jar jar, Instant done, IReadOnlyDictionary<Guid, Place> places, MeansOfJars means, CancellationToken cancellationToken)
    {
        Instant origin = QuarterHour.Floor(jar.PackedAt);
        TemperatureHistory history = await TemperatureHistory.ReadAsync(
            log, means.AmongThem([(jar, done)]), Instant.Min(origin, done - Surroundings.LearnedFrom), done, cancellationToken);
        double days = Math.Max(QuarterHour.Days(origin, done), TemperatureCourse.StepDays);
        return Forecaster.Learn(JarForecaster.Request(jar, Surroundings.Of(jar, places, history, done, days), days));
    }

    /// <summary>When its ferment was over; null where it teaches nothing: still working, thrown out, spoiled on the way, or never tasted nor
    /// measured.</summary>
    private static Instant? DoneAt(Jar jar)
    {
        var standing = jar.Standing.ToList();
        StageChange? done = standing.OfType<StageChange>().FirstOrDefault();
        bool wentWell = standing.All(each => each is not StageChange { Stage: JarStage.ThrownOut } and not Sighting { Kind: not SightingKind.Gas });
        bool saidSomething = done is not null && standing.Any(each => each is PhMeasurement or Titration or Taste && each.At <= done.At);
        return done is { Stage: JarStage.Cold or JarStage.Finished } && wentWell && saidSomething && done.At > jar.PackedAt ? done.At : null;
    }
}
