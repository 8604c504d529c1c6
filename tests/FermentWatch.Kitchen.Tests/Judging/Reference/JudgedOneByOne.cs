using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Judging.Reference;

/// <summary>What <see cref="ReadingJudge"/> must say, each reading with its neighbours gathered anew: readings times neighbours, and plain
/// to read.</summary>
internal static class JudgedOneByOne
{
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
        if (reading.MeasuredAt - reading.ReceivedAt > ReadingJudge.ClockMayLead)
            return Verdict.ClockNotBelieved;
        if (reading.ReceivedAt - reading.MeasuredAt > ReadingJudge.OldestUseful)
            return Verdict.TooOld;

        Gather(readings, index, neighbours);
        if (IsSentinel(reading, neighbours))
            return Verdict.Sentinel;
        if (!range.Holds(reading.Value))
            return Verdict.OutOfRange;

        neighbours.RemoveAll(value => !range.Holds(value));
        return JumpOneByOne.Is(readings, index, neighbours, range) ? Verdict.Jump : Verdict.Counts;
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
        for (int i = index - 1; i >= 0 && at - readings[i].MeasuredAt <= ReadingJudge.Reach; i--)
            neighbours.Add(readings[i].Value);
        for (int i = index + 1; i < readings.Count && readings[i].MeasuredAt - at <= ReadingJudge.Reach; i++)
            neighbours.Add(readings[i].Value);
    }
}
