using System.Globalization;

namespace FermentWatch.Kinetics.Temperature;

/// <summary>
/// Fills what was not measured from the room's own cycle and level. The cycle is learned from before the gap, or until two days after one
/// that comes early: days that follow later fill it no other way, so that a forecast can go on from where it stood.
/// </summary>
internal static class GapFilling
{
    private const double HoursToForget = 18;

    /// <summary>So much of a room tells its cycle.</summary>
    private const int EnoughSteps = 2 * TemperatureCourse.StepsPerDay, LeastKnownSteps = TemperatureCourse.StepsPerDay / 4;

    /// <summary>Up to an hour without a mean is a slow sensor, not a gap worth a word.</summary>
    private const int LongestQuietGapSteps = 4;

    public static TemperatureStep[] Fill(IReadOnlyList<TemperatureStep> steps, TypicalRoom fallback, List<string> remarks)
    {
        if (steps.Count == 0)
            return [new TemperatureStep(fallback.MeanCelsius, fallback.SpreadCelsius, InsideJar: false)];
        double?[] counted = new double?[steps.Count];
        for (int i = 0; i < counted.Length; i++)
            counted[i] = steps[i].Celsius is { } celsius && TemperatureStep.IsInRange(celsius) ? celsius : null;
        int missing = StepsInLongGaps(counted);
        if (missing > 0 && missing < counted.Length)
            remarks.Add(string.Create(CultureInfo.InvariantCulture,
                $"{missing / 4.0:0.##} h of temperature were not measured: filled from the room's own cycle, with a wider spread"));
        var cycles = new Dictionary<int, RoomCycle>();
        int[] knownBefore = KnownBefore(counted);
        int[] toPrevious = Distances(counted, forward: true);
        int[] toNext = Distances(counted, forward: false);
        var filled = new TemperatureStep[steps.Count];
        for (int i = 0; i < filled.Length; i++)
            filled[i] = counted[i] is { } known ? steps[i] with { Celsius = known } : Between(i);
        return filled;

        TemperatureStep Between(int i)
        {
            RoomCycle cycle = CycleAt(i);
            // The room's level on each side fades with the distance to it; what neither side tells is the room's own spread.
            double before = Memory(toPrevious[i]);
            double after = Memory(toNext[i]);
            double level = (before > 0 ? before * Level(cycle, i - toPrevious[i]) : 0) + (after > 0 ? after * Level(cycle, i + toNext[i]) : 0);
            double weight = Math.Max(1, before + after);
            double unknown = 1 - Math.Max(before, after);
            double spread = Math.Sqrt(Square(steps[i].SpreadCelsius) + (unknown * (2 - unknown) * Square(cycle.LevelSpreadCelsius)));
            return new(Math.Clamp(cycle.At(i) + (level / weight), TemperatureStep.LowestCelsius, TemperatureStep.HighestCelsius), spread,
                steps[i].InsideJar);
        }

        double Level(RoomCycle cycle, int at) => counted[at]!.Value - cycle.At(at);

        RoomCycle CycleAt(int i)
        {
            int begin = toPrevious[i] == int.MaxValue ? 0 : i - toPrevious[i], end = toNext[i] == int.MaxValue ? counted.Length : i + toNext[i];
            int doubled = begin < EnoughSteps ? 0 : EnoughSteps << (int)Math.Log2(begin / (double)EnoughSteps);
            // Of what was known before it more than half, in spans that double, so that few are learned.
            int until = knownBefore[doubled] >= LeastKnownSteps ? doubled : Math.Min(counted.Length, end + EnoughSteps);
            return cycles.TryGetValue(until, out RoomCycle? known) ? known : cycles[until] = RoomCycle.Learn(counted.AsSpan(0, until), fallback);
        }
    }

    /// <summary>How many steps before each were measured.</summary>
    private static int[] KnownBefore(double?[] counted)
    {
        int[] known = new int[counted.Length + 1];
        for (int i = 0; i < counted.Length; i++)
            known[i + 1] = known[i] + (counted[i] is null ? 0 : 1);
        return known;
    }

    private static int StepsInLongGaps(double?[] counted)
    {
        int total = 0, run = 0;
        for (int i = 0; i <= counted.Length; i++)
        {
            if (i < counted.Length && counted[i] is null)
            {
                run++;
                continue;
            }
            total += run > LongestQuietGapSteps ? run : 0;
            run = 0;
        }
        return total;
    }

    private static double Memory(int distance) =>
        distance == int.MaxValue ? 0 : Math.Exp(-distance / (HoursToForget * 4));

    private static double Square(double value) => value * value;

    private static int[] Distances(double?[] counted, bool forward)
    {
        int[] distances = new int[counted.Length];
        int distance = int.MaxValue;
        for (int k = 0; k < counted.Length; k++)
        {
            int i = forward ? k : counted.Length - 1 - k;
            if (counted[i] is not null)
                distance = 0;
            else if (distance != int.MaxValue)
                distance++;
            distances[i] = distance;
        }
        return distances;
    }
}
