using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Lines;
using NodaTime;

namespace FermentWatch.Kitchen.Words;

/// <summary>
/// When to taste first: from the early end of the forecast; where there is none, after about a week (common practice, no source);
/// in leafy jars not on days 2 to 5 unmeasured (early nitrite).
/// </summary>
public static class Tasting
{
    private const int UsualFirstDay = 7;
    private const int LeafyNotBefore = 6;

    /// <summary>The day after packing from which tasting is worth while.</summary>
    public static int FirstDay(Jar jar, PassageDays target, AcidLineState state)
    {
        int due = target.P10 is { } early ? (int)Math.Floor(early) : UsualFirstDay;
        bool heldBack = DayByDay.IsLeafy(jar) && state != AcidLineState.MeasuredBelow;
        return Math.Max(due, heldBack ? LeafyNotBefore : 1);
    }

    /// <summary>The same in words.</summary>
    public static string Words(LocalDate first, LocalDate today) => first <= today
        ? "Taste daily now, until it is right; a clean fork, and never to decide whether something is wrong."
        : $"First taste {DateWords.When(first, today)}, then daily until it is right.";
}
