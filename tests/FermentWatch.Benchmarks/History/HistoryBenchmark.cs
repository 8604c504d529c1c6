using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using FermentWatch.Benchmarks.Crowd;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Storage;
using FermentWatch.TestKit;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Benchmarks.History;

/// <summary>
/// Windows of a day to three years, in at most 1,500 points, asked of the product in a process of its own and of victoria-metrics with the
/// same readings, both over HTTP on one connection. The reference is asked for points as long as ours are,
/// and not out of its cache of answers: people look at a window once.
/// </summary>
internal static class HistoryBenchmark
{
    private const int Points = 1500;
    private const int Rounds = 200;
    private const int WarmUp = 300;
    private static readonly int[] WindowDays = [1, 3, 7, 30, 90, 365, 1095];

    public static async Task RunAsync(int sensors, int days)
    {
        using var folder = new TemporaryFolder();
        var readings = new MinuteReadings(sensors, days);
        var watch = Stopwatch.StartNew();
        await HistoryHousehold.MakeAsync(folder.Path, readings);
        Console.WriteLine($"{readings.Count:N0} readings of {sensors} sensors over {days} days; filled in {watch.Elapsed.TotalSeconds:F0} s, "
            + $"{new FileInfo(System.IO.Path.Combine(folder.Path, "readings.db")).Length >> 20:N0} MB");
        await using var reference = new VictoriaMetrics();
        await reference.StartAsync();
        watch.Restart();
        await readings.SendAsync(reference.Address);
        Console.WriteLine($"victoria-metrics filled in {watch.Elapsed.TotalSeconds:F0} s");

        await using ServiceProcess service = await ServiceProcess.Start(folder.Path).UpAsync();
        using HttpClient ours = await Browsers.PersonAsync(service, folder.Path);
        using var theirs = new HttpClient(new SocketsHttpHandler { MaxConnectionsPerServer = 1 }) { BaseAddress = reference.Address };
        await using ServiceProvider services = HistoryHousehold.Services(folder.Path);
        services.OpenStorage();
        await JarOfAYear.RunAsync(folder.Path, readings);
        foreach (int window in WindowDays.Where(window => window <= days))
            await CompareAsync(services.GetRequiredService<IReadingHistory>(), ours, theirs, readings, window);
    }

    private static async Task CompareAsync(IReadingHistory log, HttpClient ours, HttpClient theirs, MinuteReadings readings, int windowDays)
    {
        var random = new Random(windowDays);
        var (own, other, store) = (new List<double>(), new List<double>(), new List<double>());
        (int ownPoints, int otherPoints, double farthest) = (0, 0, 0);
        for (int round = -WarmUp; round < Rounds; round++)
        {
            int sensor = random.Next(readings.Sensors);
            // Whole days: both then cut the same points.
            Instant from = readings.From + Duration.FromDays(random.Next(readings.Days - windowDays + 1)), to = from + Duration.FromDays(windowDays);
            (double ownMs, JsonElement answer) = await AskAsync(ours,
                $"/api/v1/history?sensor=s{sensor}&from={Text(from)}&to={Text(to)}&points={Points}");
            long step = answer.GetProperty("point_seconds") is { ValueKind: JsonValueKind.Number } seconds ? seconds.GetInt64() : 60;
            string query = Uri.EscapeDataString(step == 60 ? $"celsius{{sensor=\"s{sensor}\"}}"
                : $"rollup(celsius{{sensor=\"s{sensor}\"}}[{step}s])");
            // A point of theirs is named by its end, which belongs to it; ours by its start.
            double shift = step == 60 ? 0.001 : step;
            (double otherMs, JsonElement same) = await AskAsync(theirs, string.Create(CultureInfo.InvariantCulture,
                $"/api/v1/query_range?query={query}&start={from.ToUnixTimeSeconds() + shift - 0.001}"
                + $"&end={to.ToUnixTimeSeconds() + shift - step - 0.001}&step={step}s&nocache=1"));
            var watch = Stopwatch.StartNew();
            await log.AskAsync(new HistoryQuestion(Quantity.Temperature, [new SensorSpan(sensor + 1, from, to)], Points) { From = from, Until = to },
                default);
            double storeMs = watch.Elapsed.TotalMilliseconds;
            if (round < 0)
                continue;
            own.Add(ownMs);
            store.Add(storeMs);
            other.Add(otherMs);
            double[] means = [.. answer.GetProperty("mean_in_unit_of_quantity").EnumerateArray().Select(each => each.GetDouble())];
            double[] reference = Means(same);
            (ownPoints, otherPoints) = (means.Length, reference.Length);
            farthest = Math.Max(farthest, means.Zip(reference, (a, b) => Math.Abs(a - b)).Max());
        }
        own.Sort();
        other.Sort();
        store.Sort();
        Console.WriteLine($"{windowDays,5} days: ours {ownPoints} points p50 {At(own, 0.5):F2} ms p99 {At(own, 0.99):F2} ms (the question itself "
            + $"{At(store, 0.5):F2} and {At(store, 0.99):F2} ms); victoria-metrics {otherPoints} points p50 {At(other, 0.5):F2} ms p99 "
            + $"{At(other, 0.99):F2} ms; {At(other, 0.5) / At(own, 0.5):F1} times as fast at p50, {At(other, 0.99) / At(own, 0.99):F1} at p99; "
            + $"means at most {farthest:F4} apart");
    }

    private static double[] Means(JsonElement answer)
    {
        JsonElement series = answer.GetProperty("data").GetProperty("result").EnumerateArray()
            .First(each => !each.GetProperty("metric").TryGetProperty("rollup", out JsonElement kind) || kind.GetString() == "avg");
        return [.. series.GetProperty("values").EnumerateArray().Select(pair => double.Parse(pair[1].GetString()!, CultureInfo.InvariantCulture))];
    }

    private static async Task<(double Milliseconds, JsonElement Answer)> AskAsync(HttpClient client, string path)
    {
        var watch = Stopwatch.StartNew();
        byte[] body = await client.GetByteArrayAsync(new Uri(path, UriKind.Relative));
        double milliseconds = watch.Elapsed.TotalMilliseconds;
        return (milliseconds, JsonDocument.Parse(body).RootElement);
    }

    private static string Text(Instant instant) => InstantPattern.General.Format(instant);

    private static double At(List<double> sorted, double share) => sorted[(int)(share * (sorted.Count - 1))];
}
