using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Lines;
using NodaTime;

namespace FermentWatch.Kitchen.Words;

/// <summary>
/// When to taste first: from the expected day; where none is expected, after about a week (common practice, no source);
/// in leafy jars not on days 2 to 5 unmeasured (early nitrite).
/// </summary>
public static class Tasting
{
    private const int UsualFirstDay = 7;
    private const int LeafyNotBefore = 6;

    /// <summary>The date from which tasting is worth while.</summary>
    /// <param name="jar">The jar.</param>
    /// <param name="target">Days after <paramref name="origin"/> to the sourness wanted; the default where nothing is forecast.</param>
    /// <param name="origin">Day 0 of the forecast.</param>
    /// <param name="zone">The household's zone.</param>
    /// <param name="state">Where the jar stands against the acid line.</param>
    public static LocalDate From(Jar jar, PassageDays target, Instant origin, DateTimeZone zone, AcidLineState state)
    {
        LocalDate packed = jar.PackedAt.InZone(zone).Date;
        LocalDate expected = (target.P50 ?? target.P10) is { } day
            ? (origin + Duration.FromDays(day)).InZone(zone).Date
            : packed.PlusDays(UsualFirstDay);
        return LocalDate.Max(expected, NotBefore(jar, zone, state));
    }

    /// <summary>The date before which tasting is not offered, whatever is expected: never on the day of packing.</summary>
    public static LocalDate NotBefore(Jar jar, DateTimeZone zone, AcidLineState state) =>
        jar.PackedAt.InZone(zone).Date.PlusDays(DayByDay.IsLeafy(jar) && state != AcidLineState.MeasuredBelow ? LeafyNotBefore : 1);

    /// <summary>The same in words.</summary>
    public static string Words(LocalDate first, LocalDate today) => first <= today
        ? "Worth tasting now, until it is right; a clean fork, and never to decide whether something is wrong."
        : $"First taste {DateWords.When(first, today)}, then until it is right.";
}
