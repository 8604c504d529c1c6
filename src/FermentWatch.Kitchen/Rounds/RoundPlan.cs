using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.Forecasts;
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
public sealed class RoundPlan(IReadOnlyDictionary<Guid, Place> places, IReadOnlyDictionary<Guid, JarForecast> forecasts, DateTimeZone zone)
{
    private const int OpenedEveryDays = 3;
    private const int BubblingEndsDay = 10;
    private const double WarmRoomCelsius = 23;

    /// <summary>The sheet of a date, for jars that ferment and were packed before it was due.</summary>
    public RoundSheet Of(LocalDate date, Instant dueAt, IEnumerable<Jar> jars) => new(date,
        [.. jars.Where(jar => jar.Stage == JarStage.Fermenting && jar.PackedAt < dueAt)
            .Select(jar => (Place: places[jar.PlacementAt(dueAt).PlaceId], Jar: JarOn(date, jar)))
            .GroupBy(entry => entry.Place.Id)
            .Select(shelf => new RoundShelf(shelf.First().Place, [.. shelf.Select(entry => entry.Jar).OrderBy(entry => entry.Jar.Number)]))
            .OrderBy(shelf => shelf.Place.ShelfOrder).ThenBy(shelf => shelf.Place.Name, StringComparer.Ordinal)]);

    private RoundJar JarOn(LocalDate date, Jar jar)
    {
        LocalDate packed = DateOf(jar.PackedAt);
        int day = Period.DaysBetween(packed, date);
        TroubleState trouble = Trouble.Of(jar, zone);
        var lookFors = LookFors(jar, day, date, trouble).ToList();
        bool opening = lookFors.Exists(each => each is LookFor.OpenForSurface or LookFor.LetGasOut or LookFor.Taste or LookFor.MeasurePh);
        var answered = jar.Standing.Where(IsAnswer).Select(answer => DateOf(answer.At)).Where(answer => answer <= date).ToHashSet();
        LocalDate lastAnswered = answered.Where(answer => answer < date).DefaultIfEmpty(packed).Max();
        return new RoundJar(jar, day, lookFors, opening, trouble.CloserWatch ? trouble.Last : null,
            Math.Max(0, Period.DaysBetween(lastAnswered, date) - 1), answered.Contains(date));
    }

    private IEnumerable<LookFor> LookFors(Jar jar, int day, LocalDate date, TroubleState trouble)
    {
        bool bubbling = day <= BubblingEndsDay;
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
        if (jar.Lid == Lid.Cloth || IsWarm(jar))
            yield return LookFor.BrineDriesFast;
        if (trouble.CloserWatch || (!bagLeftAlone && day >= OpenedEveryDays && day % OpenedEveryDays == 0))
            yield return LookFor.OpenForSurface;
        if (IsTastingDay(jar, date, trouble))
            yield return LookFor.Taste;
        if (trouble.ForecastWithdrawn || PhDue.On(date, day, Line(jar), zone))
            yield return LookFor.MeasurePh;
    }

    private bool IsTastingDay(Jar jar, LocalDate date, TroubleState trouble)
    {
        if (trouble.ForecastWithdrawn || trouble.CloserWatch || jar.Standing.OfType<Taste>().LastOrDefault()?.Verdict is TasteVerdict.Right or TasteVerdict.PastIt)
            return false;
        return forecasts.TryGetValue(jar.Id, out JarForecast? forecast)
            && Tasting.From(jar, forecast.Forecast.Target ?? default, forecast.Origin, zone, Line(jar).State) <= date;
    }

    private bool IsWarm(Jar jar) =>
        forecasts.TryGetValue(jar.Id, out JarForecast? forecast)
        && forecast.PointAt(forecast.AsOf).JarCelsius > WarmRoomCelsius;

    private AcidLineReport Line(Jar jar) => AcidLine.Report(jar.Standing.OfType<PhMeasurement>(), zone);

    private static bool IsAnswer(Observation observation) => observation is Look or Sighting or Taste or StageChange;

    private LocalDate DateOf(Instant instant) => instant.InZone(zone).Date;
}
