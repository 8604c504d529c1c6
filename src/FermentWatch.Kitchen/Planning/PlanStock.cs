using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.ColdStore;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using NodaTime;

namespace FermentWatch.Kitchen.Planning;

/// <summary>What stands there of a vegetable already, as lots. Jars of other vegetables feed no plan of it,
/// and have room and vessels of their own.</summary>
public static class PlanStock
{
    /// <summary>
    /// Lots of the kept jars; of one that works and of which nothing is forecast nobody knows when it is ready, and it is left out. What was
    /// taken out of a jar is no stock any more.
    /// </summary>
    /// <param name="kept">The jars.</param>
    /// <param name="forecasts">Their latest forecasts, by jar.</param>
    /// <param name="vegetable">What is planned.</param>
    /// <param name="today">The present day.</param>
    /// <param name="zone">The household's zone.</param>
    public static IReadOnlyList<Lot> Of(IReadOnlyList<Jar> kept, IReadOnlyDictionary<Guid, JarForecast> forecasts, string vegetable, LocalDate today,
        DateTimeZone zone) => [.. kept.Where(jar => TestedRecipe.MainVegetable(jar)?.Name == vegetable).OrderBy(jar => jar.Number)
            .Select(jar => OfJar(jar, forecasts.GetValueOrDefault(jar.Id), today, zone)).OfType<Lot>()
            .GroupBy(lot => lot with { Count = 1 }).Select(alike => alike.Key with { Count = alike.Count() })];

    private static Lot? OfJar(Jar jar, JarForecast? forecast, LocalDate today, DateTimeZone zone)
    {
        double litres = Servings.LitresOf(jar) * LeftInJar.FractionOf(jar);
        if (litres <= 0)
            return null;
        int started = Math.Min(0, Period.DaysBetween(today, jar.PackedAt.InZone(zone).Date));
        return jar.Stage == JarStage.Cold ? new Lot(0, 1, jar.VesselLitres, litres, null, IsPlanned: false)
            : jar.Stage == JarStage.Fermenting && Ready(forecast?.Forecast) is { } ready
                ? new Lot(started, 1, jar.VesselLitres, litres, ready, IsPlanned: false) : null;
    }

    /// <summary>As forecast; where a late end is beyond its span, as far behind the middle as the span is long.</summary>
    private static ReadyDays? Ready(Forecast? forecast) => forecast?.Target is { P10: { } early, P50: { } middle } days
        ? new ReadyDays(Math.Max(early, 0.1), Math.Max(middle, 0.1), Math.Max(days.P90 ?? forecast.Course[^1].Day * 1.5, 0.1), forecast.AcidLine.P90)
        : null;
}
