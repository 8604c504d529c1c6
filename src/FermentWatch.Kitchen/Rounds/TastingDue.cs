using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Lines;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Troubles;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>From when on a jar is tasted on the round.</summary>
public static class TastingDue
{
    /// <summary>The first date, past or to come; null where it is not tasted: after trouble, and once a taste said right or past it.</summary>
    public static LocalDate? From(Jar jar, JarForecast forecast, DateTimeZone zone)
    {
        TroubleState trouble = Trouble.Of(jar, zone);
        if (trouble.ForecastWithdrawn || trouble.CloserWatch || jar.Standing.OfType<Taste>().LastOrDefault()?.Verdict is TasteVerdict.Right or TasteVerdict.PastIt)
            return null;
        AcidLineState state = AcidLine.Report(jar.Standing.OfType<PhMeasurement>(), zone).State;
        return Tasting.From(jar, forecast.Forecast.Target ?? default, forecast.Origin, zone, state);
    }
}
