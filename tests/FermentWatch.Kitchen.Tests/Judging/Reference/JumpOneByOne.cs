using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Judging.Reference;

/// <summary>The jump as it was first written, over a list of neighbours.</summary>
internal static class JumpOneByOne
{
    /// <summary>Fewer neighbours than this cannot outvote a reading.</summary>
    private const int NeighboursThatOutvote = 3;

    /// <summary>Fewer neighbours than this do not tell a noise; the quantity's largest step is the measure.</summary>
    private const int NeighboursThatTellNoise = 5;

    /// <summary>From so many neighbours on their noise is taken at its word; of fewer it is easily found too small by half.</summary>
    private const double NeighboursThatSettleNoise = 16;

    private const double StandardDeviationOfMedianDeviation = 1.4826;

    private const double StandardDeviationsOfJump = 6;

    /// <summary>
    /// What is shown for as long as the model's means are, and by more than two readings, is a level: a window was opened, a
    /// sensor was moved. Where readings come at uneven intervals the neighbours before and after a step do not balance, and would
    /// outvote its edge for good.
    /// </summary>
    private static readonly Duration _levelLasts = Duration.FromMinutes(15);

    private const int ReadingsOfALevel = 3;

    /// <summary>Whether <paramref name="readings"/>[<paramref name="index"/>] is one.</summary>
    /// <param name="readings">Readings of one sensor and quantity by time of measurement.</param>
    /// <param name="index">Which.</param>
    /// <param name="neighbours">The values within <see cref="ReadingJudge.Reach"/> that can be believed; left in disorder.</param>
    /// <param name="range">What the quantity can show.</param>
    public static bool Is(IReadOnlyList<Reading> readings, int index, List<double> neighbours, PlausibleRange range)
    {
        if (neighbours.Count < NeighboursThatOutvote)
            return false;
        double middle = Median(neighbours);
        double distance = Math.Abs(readings[index].Value - middle);
        // What is nearer than any jump needs no noise; that is nearly every reading, and spares the second sorting.
        if (distance <= range.LeastJump)
            return false;
        double limit = Limit(neighbours, middle, range);
        return distance > limit && !IsOfALevel(readings, index, limit);
    }

    private static double Limit(List<double> neighbours, double middle, PlausibleRange range)
    {
        if (neighbours.Count < NeighboursThatTellNoise)
            return range.LargestStep;
        double widening = Math.Max(1, NeighboursThatSettleNoise / neighbours.Count);
        for (int i = 0; i < neighbours.Count; i++)
            neighbours[i] = Math.Abs(neighbours[i] - middle);
        double noise = StandardDeviationOfMedianDeviation * Median(neighbours);
        return Math.Max(range.LeastJump, StandardDeviationsOfJump * widening * noise);
    }

    private static bool IsOfALevel(IReadOnlyList<Reading> readings, int index, double limit)
    {
        int first = index, last = index;
        while (first > 0 && IsAlike(readings[first - 1], readings[index], limit))
            first--;
        while (last < readings.Count - 1 && IsAlike(readings[last + 1], readings[index], limit))
            last++;
        return last - first + 1 >= ReadingsOfALevel && readings[last].MeasuredAt - readings[first].MeasuredAt >= _levelLasts;
    }

    private static bool IsAlike(Reading other, Reading reading, double limit)
    {
        Duration apart = other.MeasuredAt - reading.MeasuredAt;
        return apart <= ReadingJudge.Reach && -apart <= ReadingJudge.Reach && Math.Abs(other.Value - reading.Value) <= limit;
    }

    private static double Median(List<double> values)
    {
        values.Sort();
        int half = values.Count / 2;
        return values.Count % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
    }
}
