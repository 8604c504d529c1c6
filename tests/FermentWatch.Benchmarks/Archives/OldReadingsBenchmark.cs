using System.Globalization;
using FermentWatch.TestKit;

namespace FermentWatch.Benchmarks.Archives;

/// <summary>A CSV file of so many readings of one sensor, one every three seconds, taken in by <c>import readings</c>.</summary>
internal static class OldReadingsBenchmark
{
    private static readonly TimeSpan Step = TimeSpan.FromSeconds(3);

    public static async Task RunAsync(int count)
    {
        using var folder = new TemporaryFolder();
        string csv = Path.Combine(folder.Path, "old.csv"), household = Path.Combine(folder.Path, "household");
        Write(csv, count);
        await Verb.RunAsync(household, "sensor", "add", "cellar");
        string[] import = ["import", "readings", csv, "--sensor", "cellar", "--time-column", "time", "--value-column", "celsius"];
        Verb first = await Verb.RunAsync(household, import);
        Console.WriteLine($"{count:N0} readings, {new FileInfo(csv).Length >> 20:N0} MB: {first}, "
            + $"{count / first.Time.TotalSeconds:N0} a second; "
            + $"the log then has {new FileInfo(Path.Combine(household, "readings.db")).Length >> 20:N0} MB");
        Console.WriteLine(first.Output);
        Verb again = await Verb.RunAsync(household, import);
        Console.WriteLine($"the same file again: {again}");
        Console.WriteLine(again.Output);
    }

    private static void Write(string path, int count)
    {
        using var csv = new StreamWriter(path);
        csv.Write("time,celsius\n");
        DateTime at = new(2023, 6, 1, 0, 0, 0, DateTimeKind.Utc);
        for (int reading = 0; reading < count; reading++, at += Step)
            csv.Write(string.Create(CultureInfo.InvariantCulture,
                $"{at:yyyy-MM-dd'T'HH:mm:ss'Z'},{18 + (3 * Math.Sin(reading / 4_583.7)):F2}\n"));
    }
}
