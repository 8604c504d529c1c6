using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Jars;
using NodaTime;

namespace FermentWatch.Kitchen.Guides;

/// <summary>
/// Nitrite of the first days: germs make it of the vegetables' nitrate before the acid is there, and its peak goes down once the brine
/// is below pH 4.5 (nitrate, nitrite and organic acids in pickled Chinese cabbage, abstract, authors not shown). To wait
/// for nine in ten is this project's own rule.
/// </summary>
public static class EarlyNitrite
{
    /// <summary>Below this pH the peak of nitrite goes down.</summary>
    public const double GoesDownBelowPh = 4.5;

    /// <summary>Where nothing is forecast: three weeks. Common practice, no source.</summary>
    private const int DaysWithoutForecast = 21;

    /// <summary>More than this share of something nobody has figures for is taken as rich.</summary>
    private const double UnknownShare = 0.05;

    /// <summary>Whether it is about this jar: something rich in nitrate is in it, or something nobody has figures for.</summary>
    public static bool Concerns(Jar jar)
    {
        double all = jar.Portions.Sum(portion => portion.MassKilograms);
        double unknown = jar.Portions.Where(portion => !Vegetable.TryFind(portion.Produce, out _)).Sum(portion => portion.MassKilograms);
        return unknown > UnknownShare * all
            || jar.Portions.Any(portion => Vegetable.TryFind(portion.Produce, out Vegetable? vegetable) && vegetable.IsRichInNitrate);
    }

    /// <summary>The first date on which nine in ten such jars are below <see cref="GoesDownBelowPh"/> and stay there.</summary>
    /// <param name="jar">The jar.</param>
    /// <param name="forecast">Its latest forecast; null where there is none.</param>
    /// <param name="zone">The household's zone.</param>
    public static LocalDate Until(Jar jar, JarForecast? forecast, DateTimeZone zone)
    {
        if (forecast is null)
            return jar.PackedAt.InZone(zone).Date.PlusDays(DaysWithoutForecast);
        double day = forecast.Forecast.Course.Reverse().TakeWhile(point => point.Ph.P90 < GoesDownBelowPh).LastOrDefault()?.Day
            ?? forecast.Forecast.Course[^1].Day;
        return forecast.At(day).InZone(zone).Date;
    }
}
