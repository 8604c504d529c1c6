using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Lines;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Troubles;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>
/// Decides what each jar needs on a date. Opening two to three times a week and leaving a brine bag alone until the bubbling
/// stops: USDA Complete Guide to Home Canning, Guide 6. When to measure: <see cref="PhDue"/>. The rest: common practice, no source.
/// </summary>
/// <param name="places">Every place.</param>
/// <param name="forecasts">The latest forecasts by jar.</param>
/// <param name="zone">The household's zone.</param>
/// <param name="dry">Places where the air is dry.</param>
/// <param name="run">Where a jar goes whose record cannot be digested; it is asked to be looked at all the same.</param>
public sealed class RoundPlan(
    IReadOnlyDictionary<Guid, Place> places, IReadOnlyDictionary<Guid, JarForecast> forecasts, DateTimeZone zone, IReadOnlySet<Guid> dry,
    SetAside.SetAsideRun run)
{
    private const int OpenedEveryDays = 3;

    /// <summary>The sheet of a date, for jars that ferment and were packed before it was due.</summary>
    public RoundSheet Of(LocalDate date, Instant dueAt, IEnumerable<Jar> jars) => new(date,
        [.. jars.Where(jar => jar.Stage == JarStage.Fermenting && jar.PackedAt < dueAt)
            .Select(jar => (Place: PlaceOf(jar, dueAt), Jar: jar)).Where(entry => entry.Place is not null)
            .Select(entry => (Place: entry.Place!, Jar: JarOrLookAtItOn(date, dueAt, entry.Jar)))
            .GroupBy(entry => entry.Place.Id)
            .Select(shelf => new RoundShelf(shelf.First().Place, [.. shelf.Select(entry => entry.Jar).OrderBy(entry => entry.Jar.Number)]))
            .OrderBy(shelf => shelf.Place.ShelfOrder).ThenBy(shelf => shelf.Place.Name, StringComparer.Ordinal)]);

    private Place? PlaceOf(Jar jar, Instant at)
    {
        Place? place = null;
        run.Try($"place of jar {jar.Number}", () => place = places[jar.PlacementAt(at).PlaceId]);
        return place;
    }

    private RoundJar JarOrLookAtItOn(LocalDate date, Instant dueAt, Jar jar)
    {
        RoundJar? planned = null;
        run.Try($"jar {jar.Number}", () => planned = JarOn(date, dueAt, jar));
        return planned ?? new RoundJar(jar, 0, [LookFor.BrineOverSolids, LookFor.NothingUp, LookFor.OpenForSurface], Opening: true, Trouble: null, DaysNotLookedAt: 0, LookedAtToday: false);
    }

    private RoundJar JarOn(LocalDate date, Instant dueAt, Jar jar)
    {
        LocalDate packed = DateOf(jar.PackedAt);
        int day = Period.DaysBetween(packed, date);
        TroubleState trouble = Trouble.Of(jar, zone);
        var answered = jar.Standing.Where(IsAnswer).Select(answer => DateOf(answer.At)).Where(answer => answer <= date).ToHashSet();
        LocalDate lastAnswered = answered.Where(answer => answer < date).DefaultIfEmpty(packed).Max();
        int missed = Math.Max(0, Period.DaysBetween(lastAnswered, date) - 1);
        var lookFors = LookFors(jar, day, date, CelsiusOf(jar, dueAt), trouble, missed).ToList();
        bool opening = lookFors.Exists(each => each is LookFor.OpenForSurface or LookFor.LetGasOut or LookFor.Taste or LookFor.MeasurePh);
        return new RoundJar(jar, day, lookFors, opening, trouble.CloserWatch ? trouble.Last : null, missed, answered.Contains(date));
    }

    private IEnumerable<LookFor> LookFors(Jar jar, int day, LocalDate date, double? celsius, TroubleState trouble, int missed)
    {
        bool bubbling = day <= BubblingEnds.Day(celsius);
        bool bagLeftAlone = jar.Cover == Cover.BrineBag && bubbling;
        yield return LookFor.BrineOverSolids;
        if (jar.Cover == Cover.Leaf)
            yield return LookFor.LeafUnder;
        if (!bagLeftAlone)
            yield return LookFor.NothingUp;
        if (day is >= 2 and <= 7)
            yield return LookFor.Bubbles;
        if (day is >= 2 and <= 5)
            yield return LookFor.TrayUnder;
        if (jar.Lid == Lid.WaterSealed)
            yield return LookFor.WaterInRim;
        if (jar.Lid == Lid.Tight && bubbling && day >= 2)
            yield return LookFor.LetGasOut;
        if (jar.Lid == Lid.Cloth || WarmthClasses.IsWarmRoom(celsius) || dry.Contains(jar.PlacementAt(date.AtStartOfDayInZone(zone).ToInstant()).PlaceId))
            yield return LookFor.BrineDriesFast;
        bool neglected = missed >= Neglect.LongDays;
        if (trouble.CloserWatch || (!bagLeftAlone && (neglected || (day >= OpenedEveryDays && day % OpenedEveryDays == 0))))
            yield return LookFor.OpenForSurface;
        // After a week unseen it is looked at first; tasting comes back with the look.
        if (missed < Neglect.WeekDays && IsTastingDay(jar, date))
            yield return LookFor.Taste;
        if (trouble.ForecastWithdrawn || PhDue.On(date, day, Line(jar), zone))
            yield return LookFor.MeasurePh;
    }

    private bool IsTastingDay(Jar jar, LocalDate date) =>
        forecasts.TryGetValue(jar.Id, out JarForecast? forecast) && TastingDue.From(jar, forecast, zone) <= date;

    private double? CelsiusOf(Jar jar, Instant at) => forecasts.TryGetValue(jar.Id, out JarForecast? forecast) ? forecast.PointAt(at).JarCelsius : null;

    private AcidLineReport Line(Jar jar) => AcidLine.Report(jar.Standing.OfType<PhMeasurement>(), zone);

    private static bool IsAnswer(Observation observation) => observation is Look or Sighting or Taste or StageChange;

    private LocalDate DateOf(Instant instant) => instant.InZone(zone).Date;
}
