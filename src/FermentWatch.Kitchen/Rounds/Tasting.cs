using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Guides;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>
/// When to taste first: from the expected day; where none is expected, after about a week (common practice, no source);
/// unmeasured not while there may be nitrite (<see cref="EarlyNitrite"/>).
/// </summary>
public static class Tasting
{
    private const int UsualFirstDay = 7;

    /// <summary>The date from which tasting is worth while.</summary>
    /// <param name="jar">The jar.</param>
    /// <param name="forecast">Its latest forecast; null where nothing is forecast.</param>
    /// <param name="zone">The household's zone.</param>
    /// <param name="state">Where the jar stands against the acid line.</param>
    public static LocalDate From(Jar jar, JarForecast? forecast, DateTimeZone zone, AcidLineState state)
    {
        LocalDate expected = forecast?.Forecast.Target is { } target && (target.P50 ?? target.P10) is { } day
            ? forecast.At(day).InZone(zone).Date
            : jar.PackedAt.InZone(zone).Date.PlusDays(UsualFirstDay);
        return LocalDate.Max(expected, NotBefore(jar, forecast, zone, state));
    }

    /// <summary>The date before which tasting is not offered, whatever is expected: never on the day of packing.</summary>
    public static LocalDate NotBefore(Jar jar, JarForecast? forecast, DateTimeZone zone, AcidLineState state)
    {
        LocalDate dayAfter = jar.PackedAt.InZone(zone).Date.PlusDays(1);
        return state != AcidLineState.MeasuredBelow && EarlyNitrite.Concerns(jar) ? LocalDate.Max(dayAfter, EarlyNitrite.Until(jar, forecast, zone))
            : dayAfter;
    }

    /// <summary>The same in words.</summary>
    public static string Words(LocalDate first, LocalDate today) => first <= today
        ? "Worth tasting now, until it is right; a clean fork, and never to decide whether something is wrong."
        : $"First taste {DateWords.When(first, today)}, then until it is right.";
}
