using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Storage.Readings;

/// <summary>The arithmetic of roll-ups: where buckets begin, and the means of the readings in them.</summary>
internal static class Bucket
{
    /// <summary>Roll-ups that are made of readings.</summary>
    internal static readonly MeanSpan[] OfReadings = [MeanSpan.QuarterHour, MeanSpan.Hour];

    /// <summary>Roll-ups that are made of shorter ones, each after what it is made of.</summary>
    internal static readonly (MeanSpan Span, MeanSpan Of)[] OfRollUps = [(MeanSpan.SixHours, MeanSpan.Hour), (MeanSpan.Day, MeanSpan.SixHours)];

    /// <summary>Length of a bucket in milliseconds.</summary>
    internal static long LengthMs(MeanSpan span) => (long)span * 60_000;

    /// <summary>Start of the bucket that holds an instant, both in milliseconds since the Unix epoch; also right before 1970.</summary>
    internal static long StartMs(MeanSpan span, long instantMs)
    {
        long length = LengthMs(span);
        long into = instantMs % length;
        return instantMs - (into < 0 ? into + length : into);
    }

    /// <summary>
    /// Means by bucket. Added up from left to right in the order given, which must be that of measurement: floating-point sums
    /// depend on their order, and the same readings must give the same bits.
    /// </summary>
    internal static List<ReadingMean> Means(MeanSpan span, IReadOnlyList<(long InstantMs, double Value)> readings)
    {
        var means = new List<ReadingMean>();
        int first = 0;
        while (first < readings.Count)
        {
            long start = StartMs(span, readings[first].InstantMs);
            double sum = 0;
            double minimum = double.PositiveInfinity;
            double maximum = double.NegativeInfinity;
            int next = first;
            for (; next < readings.Count && StartMs(span, readings[next].InstantMs) == start; next++)
            {
                double value = readings[next].Value;
                sum += value;
                minimum = Math.Min(minimum, value);
                maximum = Math.Max(maximum, value);
            }

            int count = next - first;
            means.Add(new ReadingMean(Instant.FromUnixTimeMilliseconds(start), sum / count, minimum, maximum, count));
            first = next;
        }

        return means;
    }
}
