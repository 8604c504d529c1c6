using System.Globalization;

namespace FermentWatch.Kinetics.Temperature;

internal static class QuarterHourMeans
{
    public static TemperatureStep[] Of(IEnumerable<TimedTemperature> readings, bool insideJar, List<string> remarks)
    {
        var sums = new SortedDictionary<int, (double Sum, int Count)>();
        int refused = 0;
        // Sorted first: a sum of doubles depends on the order, and the order of a file must not matter.
        foreach (TimedTemperature reading in readings.OrderBy(reading => reading.Day).ThenBy(reading => reading.Celsius))
        {
            if (!TemperatureStep.IsInRange(reading.Celsius) || !(reading.Day >= 0 && reading.Day <= 400))
            {
                refused++;
                continue;
            }
            int index = (int)(reading.Day * TemperatureCourse.StepsPerDay);
            (double sum, int count) = sums.GetValueOrDefault(index);
            sums[index] = (sum + reading.Celsius, count + 1);
        }
        if (refused > 0)
            remarks.Add(string.Create(CultureInfo.InvariantCulture,
                $"{refused} temperatures outside -5 to 45 C or outside day 0 to 400 were left out"));
        int length = sums.Count == 0 ? 1 : sums.Keys.Last() + 1;
        var steps = new TemperatureStep[length];
        Array.Fill(steps, insideJar ? TemperatureStep.Jar(null) : TemperatureStep.Room(null));
        foreach ((int index, (double sum, int count)) in sums)
            steps[index] = steps[index] with { Celsius = sum / count };
        return steps;
    }
}
