using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Storage.Readings.Histories;

/// <summary>How long the points of an answer are, and of which roll-up they are made.</summary>
internal static class PointWidth
{
    // Lengths people can think in, and each made of few buckets of the roll-up below it.
    private static readonly long[] BelowADay = [15, 30, 60, 120, 180, 360, 720];

    private static readonly long DayMs = Bucket.LengthMs(MeanSpan.Day);

    /// <summary>Roll-ups, the longest first.</summary>
    internal static readonly MeanSpan[] RollUps = [MeanSpan.Day, MeanSpan.SixHours, MeanSpan.Hour, MeanSpan.QuarterHour];

    /// <summary>The shortest length in milliseconds by which a span takes no more than so many points.</summary>
    internal static long Of(long fromMs, long untilMs, int points)
    {
        foreach (long minutes in BelowADay)
            if (Count(fromMs, untilMs, minutes * 60_000) <= points)
                return minutes * 60_000;
        long days = Math.Max(1, (untilMs - fromMs) / (DayMs * points));
        while (Count(fromMs, untilMs, days * DayMs) > points)
            days++;
        return days * DayMs;
    }

    /// <summary>The longest roll-up of which points of this length can be made.</summary>
    internal static MeanSpan RollUpFor(long widthMs) => RollUps.First(span => widthMs % Bucket.LengthMs(span) == 0);

    /// <summary>Start of the point that holds an instant.</summary>
    internal static long StartMs(long widthMs, long instantMs)
    {
        long into = instantMs % widthMs;
        return instantMs - (into < 0 ? into + widthMs : into);
    }

    private static long Count(long fromMs, long untilMs, long widthMs) =>
        ((StartMs(widthMs, untilMs - 1) - StartMs(widthMs, fromMs)) / widthMs) + 1;
}
