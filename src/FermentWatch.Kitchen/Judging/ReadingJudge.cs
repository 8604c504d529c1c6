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

    /// <summary>A power-up value is told from a real 85 C by neighbours this warm.</summary>
    private const double NearEightyFiveCelsius = 70;

    /// <summary>Verdicts for <paramref name="readings"/>[<paramref name="first"/>..<paramref name="end"/>).</summary>
    /// <param name="readings">Readings of one sensor and quantity by time of measurement, with their neighbours.</param>
    /// <param name="first">Index of the first to judge.</param>
    /// <param name="end">Index after the last to judge.</param>
    /// <param name="range">What the sensor can plausibly show.</param>
    public static IEnumerable<Verdict> Judge(IReadOnlyList<Reading> readings, int first, int end, PlausibleRange range)
    {
        var neighbours = new List<double>();
        for (int i = first; i < end; i++)
            yield return JudgeOne(readings, i, range, neighbours);
    }

    private static Verdict JudgeOne(IReadOnlyList<Reading> readings, int index, PlausibleRange range, List<double> neighbours)
    {
        Reading reading = readings[index];
        if (reading.MeasuredAt - reading.ReceivedAt > ClockMayLead)
            return Verdict.ClockNotBelieved;
        if (reading.ReceivedAt - reading.MeasuredAt > OldestUseful)
            return Verdict.TooOld;

        Gather(readings, index, neighbours);
        if (IsSentinel(reading, neighbours))
            return Verdict.Sentinel;
        if (!range.Holds(reading.Value))
            return Verdict.OutOfRange;

        neighbours.RemoveAll(value => !range.Holds(value));
        return Jump.Is(readings, index, neighbours, range) ? Verdict.Jump : Verdict.Counts;
    }

    private static bool IsSentinel(Reading reading, List<double> neighbours)
    {
        if (reading.Quantity != Quantity.Temperature)
            return false;
        if (reading.Value == -127.0)
            return true;
        return reading.Value == 85.0 && !neighbours.Exists(value => value is > NearEightyFiveCelsius and not 85.0);
    }

    private static void Gather(IReadOnlyList<Reading> readings, int index, List<double> neighbours)
    {
        neighbours.Clear();
        Instant at = readings[index].MeasuredAt;
        for (int i = index - 1; i >= 0 && at - readings[i].MeasuredAt <= Reach; i--)
            neighbours.Add(readings[i].Value);
        for (int i = index + 1; i < readings.Count && readings[i].MeasuredAt - at <= Reach; i++)
            neighbours.Add(readings[i].Value);
    }
}
