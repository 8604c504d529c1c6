using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Kitchen.Judging;

/// <summary>
/// Decides what stored readings are worth. A verdict depends only on the reading and on the readings of the same sensor and
/// quantity within <see cref="Reach"/> of it, never on the order of arrival or on other verdicts, so that shuffled, late and
/// repeated input ends in the same verdicts.
/// </summary>
public static class ReadingJudge
{
    /// <summary>How far a reading's neighbours can matter.</summary>
    public static readonly Duration Reach = Duration.FromMinutes(30);

    /// <summary>How far ahead of ours a device's clock may run.</summary>
    public static readonly Duration ClockMayLead = Duration.FromMinutes(5);

    /// <summary>Older than this on arrival means a clock that was never set rather than a sensor that was out of reach.</summary>
    public static readonly Duration OldestUseful = Duration.FromDays(366);

    /// <summary>
    /// Verdicts for <paramref name="readings"/>[<paramref name="first"/>..<paramref name="end"/>). The window of neighbours slides with
    /// them, so that n readings cost n log n, however close together they lie.
    /// </summary>
    /// <param name="readings">Readings of one sensor and quantity by time of measurement, with their neighbours.</param>
    /// <param name="first">Index of the first to judge.</param>
    /// <param name="end">Index after the last to judge.</param>
    /// <param name="range">What the sensor can plausibly show.</param>
    public static IEnumerable<Verdict> Judge(IReadOnlyList<Reading> readings, int first, int end, PlausibleRange range)
    {
        if (first >= end)
            yield break;
        Sentinel[] sentinels = [.. MeasuredQuantity.Of(readings[first].Quantity).Sentinels];
        var neighbours = new Neighbours(readings, range, sentinels);
        for (int i = first; i < end; i++)
            yield return JudgeOne(readings[i], i, range, sentinels, neighbours);
    }

    private static Verdict JudgeOne(Reading reading, int index, PlausibleRange range, Sentinel[] sentinels, Neighbours neighbours)
    {
        if (reading.MeasuredAt - reading.ReceivedAt > ClockMayLead)
            return Verdict.ClockNotBelieved;
        if (reading.ReceivedAt - reading.MeasuredAt > OldestUseful)
            return Verdict.TooOld;

        neighbours.MoveTo(index);
        if (IsSentinel(reading.Value, sentinels, neighbours))
            return Verdict.Sentinel;
        if (!range.Holds(reading.Value))
            return Verdict.OutOfRange;
        return Jump.Is(reading, neighbours, range) ? Verdict.Jump : Verdict.Counts;
    }

    private static bool IsSentinel(double value, Sentinel[] sentinels, Neighbours neighbours)
    {
        foreach (Sentinel sentinel in sentinels)
            if (sentinel.Value == value)
                return sentinel.RealBesideMoreThan is null || !neighbours.MakeTheSentinelReal;
        return false;
    }
}
