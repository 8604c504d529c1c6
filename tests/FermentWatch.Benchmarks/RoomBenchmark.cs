using System.Globalization;
using FermentWatch.Kinetics.Salt;
using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Benchmarks;

/// <summary>
/// The room forecast on a real hourly record, gaps and all: issued every midnight after three weeks of history, scored 24 to 120
/// hours ahead over the second half against the same hour of the last day before the forecast.
/// </summary>
internal static class RoomBenchmark
{
    private const int FirstHour = 24;
    private const int LastHour = 120;
    private const int HistoryDays = 21;
    private const int StepsPerHour = 4;

    /// <summary>Half width of an 80 % interval in standard deviations.</summary>
    private const double EightyPerCent = 1.2815516;

    public static void Run(string file)
    {
        double?[] hours = Read(file);
        var score = new Score();
        int firstMidnight = Math.Max(HistoryDays * 24, (hours.Length / 2 + 23) / 24 * 24);
        for (int midnight = firstMidnight; midnight + LastHour < hours.Length; midnight += 24)
            score.Add(hours, midnight);
        score.Print($"{file}: second half");
        var sound = new Score();
        // The record ends in a fault of the heating: its last three weeks left out as well.
        for (int midnight = firstMidnight; midnight + LastHour < hours.Length - (21 * 24); midnight += 24)
            sound.Add(hours, midnight);
        sound.Print("the same without the last three weeks, where the heating failed");
    }

    private static double?[] Read(string file)
    {
        var rows = File.ReadLines(file).Skip(1).Select(line => line.Split(',')).Select(cells => (
            At: DateTime.ParseExact(cells[0], "yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture,
            DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal),
            Celsius: CustomaryUnits.CelsiusFromFahrenheit(double.Parse(cells[1], NumberStyles.Float, CultureInfo.InvariantCulture)))).ToArray();
        DateTime first = rows[0].At.Date;
        double?[] hours = new double?[(int)(rows[^1].At - first).TotalHours + 1];
        foreach ((DateTime at, double celsius) in rows)
            hours[(int)(at - first).TotalHours] = celsius;
        return hours;
    }

    private sealed class Score
    {
        private readonly List<double> _ours = [];
        private readonly List<double> _yesterday = [];
        private int _held;

        public void Add(double?[] hours, int midnight)
        {
            double?[] past = [.. hours[..midnight].SelectMany(hour => Enumerable.Repeat(hour, StepsPerHour))];
            TemperatureStep[] ahead = RoomOutlook.Learn(past, TypicalRoom.Usual).Ahead(LastHour * StepsPerHour);
            for (int hour = FirstHour; hour < LastHour; hour++)
            {
                if (hours[midnight + hour] is not { } seen || LastKnown(hours, midnight - 24 + (hour % 24)) is not { } yesterday)
                    continue;
                TemperatureStep step = ahead[(hour * StepsPerHour) + 2];
                double off = Math.Abs(step.Celsius!.Value - seen);
                _ours.Add(off);
                _yesterday.Add(Math.Abs(yesterday - seen));
                _held += off <= EightyPerCent * step.SpreadCelsius ? 1 : 0;
            }
        }

        public void Print(string what) => Console.WriteLine(
            $"{what}: {_ours.Count} hours, mean absolute error {_ours.Average():0.000} C, same hour yesterday {_yesterday.Average():0.000} C, ratio "
            + $"{_ours.Average() / _yesterday.Average():0.000}; the 80 % interval holds {100.0 * _held / _ours.Count:0.0} %");

        private static double? LastKnown(double?[] hours, int at)
        {
            while (at >= 0 && hours[at] is null)
                at -= 24;
            return at >= 0 ? hours[at] : null;
        }
    }
}
