using System.Diagnostics;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Storage;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Benchmarks;

/// <summary>
/// What a quarter of an hour costs a household of 100 jars, half of them cold for months, with 20 sensors in 20 places, from the real
/// store: without news, with news of one place and of all. The reference is making every forecast anew.
/// </summary>
internal static class QuarterBenchmark
{
    private const int Quarters = 3;
    private static readonly Instant Now = Instant.FromUtc(2027, 3, 1, 9, 0);

    public static async Task RunAsync()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("fermentwatch-bench-");
        try
        {
            await using ServiceProvider services = Services(folder.FullName);
            services.OpenStorage();
            await HundredJars.FillAsync(services, Now);
            await MeasureAsync(services, folder);
        }
        finally
        {
            folder.Delete(true);
        }
    }

    public static ServiceProvider Services(string folder) => new ServiceCollection().AddLogging()
        .AddSingleton(TimeProvider.System).AddSingleton<IClock>(TimeProvider.System.ToClock())
        .AddFermentWatchStorage(new StorageOptions { Folder = folder })
        .AddSingleton<SetAside>().AddSingleton<ForecastPass>().AddSingleton<JudgingPass>()
        .BuildServiceProvider();

    private static async Task MeasureAsync(ServiceProvider services, DirectoryInfo folder)
    {
        ForecastPass pass = services.GetRequiredService<ForecastPass>();
        double full = 0;
        long stored = await WrittenAsync(folder, async () => full = await TimeAsync(() => pass.RunAsync(Now, default)));
        Console.WriteLine($"every forecast anew: {full:F0} ms, {stored / 1024.0 / HundredJars.Jars:F1} kB written a jar");

        double[] none = new double[Quarters], one = new double[Quarters], all = new double[Quarters];
        long written = 0;
        for (int quarter = 0; quarter < Quarters; quarter++)
        {
            // Every sensor reports every quarter hour, some later than others.
            Instant at = Now + (QuarterHour.Length * (2 * quarter)), next = at + QuarterHour.Length;
            none[quarter] = await TimeAsync(() => pass.RunAsync(next, default));
            await ReportAsync(services, at, 1, 1);
            one[quarter] = await TimeAsync(() => pass.RunAsync(next, default));
            await ReportAsync(services, at, 2, HundredJars.Places);
            await pass.RunAsync(next, default);
            await ReportAsync(services, next, 1, HundredJars.Places);
            written += await WrittenAsync(folder, async () =>
                all[quarter] = await TimeAsync(() => pass.RunAsync(next + QuarterHour.Length, default)));
        }
        Say("without news", none, full);
        Say("with news of one place", one, full);
        Say("with news of all places", all, full);
        Console.WriteLine($"written for a quarter hour with news of all places: {written / 1024.0 / Quarters:F0} kB");
    }

    private static async Task ReportAsync(ServiceProvider services, Instant quarter, int first, int last)
    {
        await services.GetRequiredService<IReadingIntake>()
            .AppendAsync([.. Enumerable.Range(first, last - first + 1).SelectMany(key => Enumerable.Range(0, 15)
            .Select(minute => HundredJars.Reading(key, quarter + Duration.FromMinutes(minute))))], default);
        await services.GetRequiredService<JudgingPass>().RunAsync(default);
    }

    private static void Say(string what, double[] times, double full)
    {
        double median = times.Order().ElementAt(times.Length / 2);
        Console.WriteLine($"a quarter hour {what}: median {median:F1} ms, 1/{full / median:F0} of making every forecast anew");
    }

    private static async Task<double> TimeAsync(Func<Task> work)
    {
        long start = Stopwatch.GetTimestamp();
        await work();
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }

    /// <summary>Bytes by which the records' file and journal grow, after both were brought together.</summary>
    private static async Task<long> WrittenAsync(DirectoryInfo folder, Func<Task> work)
    {
        string journal = Path.Combine(folder.FullName, "records.db-wal");
        using (var connection = new Microsoft.Data.Sqlite.SqliteConnection(
            $"Data Source={Path.Combine(folder.FullName, "records.db")};Pooling=False"))
        {
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = "PRAGMA wal_checkpoint(TRUNCATE)";
            command.ExecuteNonQuery();
        }
        await work();
        return File.Exists(journal) ? new FileInfo(journal).Length : 0;
    }
}
