using System.Globalization;

namespace FermentWatch.Kinetics.Temperature;

internal static class GapFilling
{
    private const double HoursToForget = 18;

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
        RoomCycle cycle = RoomCycle.Learn(counted, fallback);
        int[] toPrevious = Distances(counted, forward: true);
        int[] toNext = Distances(counted, forward: false);
        var filled = new TemperatureStep[steps.Count];
        for (int i = 0; i < filled.Length; i++)
            filled[i] = counted[i] is { } known ? steps[i] with { Celsius = known } : Between(i);
        return filled;

        TemperatureStep Between(int i)
        {
            // The room's level on each side fades with the distance to it; what neither side tells is the room's own spread.
            double before = Memory(toPrevious[i]);
            double after = Memory(toNext[i]);
            double level = (before > 0 ? before * Level(i - toPrevious[i]) : 0) + (after > 0 ? after * Level(i + toNext[i]) : 0);
            double weight = Math.Max(1, before + after);
            double unknown = 1 - Math.Max(before, after);
            double spread = Math.Sqrt(Square(steps[i].SpreadCelsius) + (unknown * (2 - unknown) * Square(cycle.LevelSpreadCelsius)));
            return new(Math.Clamp(cycle.At(i) + (level / weight), TemperatureStep.LowestCelsius, TemperatureStep.HighestCelsius), spread,
                steps[i].InsideJar);
        }

        double Level(int at) => counted[at]!.Value - cycle.At(at);
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
