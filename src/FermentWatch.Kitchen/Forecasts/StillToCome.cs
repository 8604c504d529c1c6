using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Temperature;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Kitchen.Forecasts;

/// <summary>Gas and sugar of a jar from now on, by what is expected of it.</summary>
/// <param name="GasLitres">Gas to come until the forecast ends, at 20 C: the middle, and what nine in ten stay below.</param>
/// <param name="MostLitresADay">The most of one of the next seven days, of which nine in ten stay below.</param>
/// <param name="HeadspaceLitres">Room above what is in the vessel; a twentieth of it at least.</param>
/// <param name="SugarAtFirst">g in 100 mL, by the tables.</param>
/// <param name="SugarLeft">Least and most that may be left: two grams and one gram of sugar for each gram of acid made.</param>
public sealed record StillToCome(
    (double Middle, double Most) GasLitres, double MostLitresADay, double HeadspaceLitres, double SugarAtFirst,
        (double Least, double Most) SugarLeft)
{
    /// <summary>Molar volume of an ideal gas at 20 C and one atmosphere, L.</summary>
    private const double LitresPerMole = 24.06;

    private const double BrineKilogramsPerLitre = 1.02, LeastHeadspace = 0.05, DaysAhead = 7;

    /// <summary>How many days the gas of the busiest day ahead takes to fill the headspace once more, a bar above the air. This project's own rule
    /// for opening.</summary>
    public double DaysToABar => MostLitresADay > 0 ? HeadspaceLitres / MostLitresADay : double.PositiveInfinity;

    /// <summary>Works it out; a forecast of some tens of milliseconds.</summary>
    /// <param name="jar">The jar, whole.</param>
    /// <param name="places">Every place it stood in.</param>
    /// <param name="history">Closed means, as <see cref="Surroundings"/> asks for them.</param>
    /// <param name="saved">Its latest forecast.</param>
    /// <param name="movedTo">Where it would go now; null where it stays.</param>
    public static StillToCome Of(Jar jar, IReadOnlyDictionary<Guid, Place> places, TemperatureHistory history, JarForecast saved,
        TypicalRoom? movedTo = null)
    {
        double now = QuarterHour.Days(saved.Origin, saved.AsOf);
        ForecastRequest request = WhatIf.RequestOf(jar, places, history, saved);
        if (movedTo is not null)
            request = request with { Temperatures = request.Temperatures.ThenIn(now, movedTo, request.Days) };
        double litres = Water(jar), perMole = LitresPerMole * litres;
        List<GasPoint> ahead = [.. Forecaster.Gas(request).Where(point => point.Day >= now - 0.5)];
        double contents = (jar.Portions.Sum(portion => portion.MassKilograms) + Added(jar)) / BrineKilogramsPerLitre;
        double acidMade = Math.Max(0, saved.PointAt(saved.AsOf).AcidityPercentLactic.P50 - saved.Forecast.Course[0].AcidityPercentLactic.P50);
        double sugar = jar.Portions.Sum(portion =>
            Vegetable.TryFind(portion.Produce, out Vegetable? vegetable) ? portion.MassKilograms * vegetable.Composition.SugarsGrams : 0) / litres;
        return new StillToCome(
            (perMole * Sum(ahead, gas => gas.P50), perMole * Sum(ahead, gas => gas.P90)),
            perMole * ahead.Where(point => point.Day <= now + DaysAhead).Select(point => point.MolesPerLitreAndDay.P90).DefaultIfEmpty(0).Max(),
            Math.Max(LeastHeadspace * jar.VesselLitres, jar.VesselLitres - contents),
            sugar, (Math.Max(0, sugar - (2 * acidMade)), Math.Max(0, sugar - acidMade)));
    }

    private static double Sum(List<GasPoint> points, Func<Quantiles, double> of) =>
        points.Zip(points.Skip(1), (a, b) => (b.Day - a.Day) * (of(a.MolesPerLitreAndDay) + of(b.MolesPerLitreAndDay)) / 2).Sum();

    private static double Added(Jar jar) => jar.AddedWaterKilograms + (jar.Starter?.MassKilograms ?? 0) + (jar.Vinegar?.MassKilograms ?? 0);

    private static double Water(Jar jar) => Added(jar) + jar.Portions.Sum(portion =>
        portion.MassKilograms * (Vegetable.TryFind(portion.Produce, out Vegetable? vegetable) ? vegetable.Composition.WaterGrams / 100 : 0));
}
