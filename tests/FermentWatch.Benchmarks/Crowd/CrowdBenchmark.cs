using System.Diagnostics;
using System.Globalization;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.TestKit;
using Microsoft.Data.Sqlite;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Benchmarks.Crowd;

/// <summary>
/// Everything at once at a real service process, on loopback: 1,000 readings a second from ten sensors that behave, one credential that
/// floods over as many connections as it gets, 100 people who open one page after the other, and a sensor that sends its month.
/// </summary>
internal static class CrowdBenchmark
{
    private const int ReadingsASecondEach = 100;
    private const int People = 100;
    private const int FloodingConnections = 40;

    public static async Task RunAsync(TimeSpan span)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("fermentwatch-crowd-");
        try
        {
            Instant now = TimeProvider.System.GetUtcNow().ToInstant();
            IReadOnlyList<(Sensor Sensor, string Password)> sensors = await CrowdHousehold.MakeAsync(folder.FullName, now);
            await using ServiceProcess service = await ServiceProcess.Start(folder.FullName).UpAsync();
            var browsers = await Browsers.SignInAsync(service, folder.FullName, People);
            using var ends = new CancellationTokenSource(span);
            var behaved = sensors.Take(CrowdHousehold.WellBehaved).Select(sensor => new CrowdSensor(service.MqttPort, sensor)).ToList();
            var flood = Enumerable.Range(0, FloodingConnections).Select(_ => new CrowdSensor(service.MqttPort, sensors[^2])).ToList();
            var month = new CrowdSensor(service.MqttPort, sensors[^1]);
            Task[] all =
            [
                .. behaved.Select(sensor => Task.Run(() => sensor.AtPaceAsync(ReadingsASecondEach, ends.Token))),
                .. flood.Select((sensor, index) => Task.Run(() => sensor.FloodAsync($"flood-{index}", ends.Token))),
                Task.Run(() => month.MonthAsync(now, ends.Token)),
                Task.Run(() => browsers.BrowseAsync(ends.Token)),
            ];
            await Task.WhenAll(all);
            string memory = File.ReadLines($"/proc/{service.Process.Id}/status").First(line => line.StartsWith("VmHWM", StringComparison.Ordinal));
            TimeSpan stopped = await service.StopAsync();
            Report(span, behaved, flood, month, browsers, memory, stopped);
            Lost(folder.FullName, [.. behaved, month]);
        }
        finally
        {
            folder.Delete(true);
        }
    }

    private static void Report(
        TimeSpan span, List<CrowdSensor> behaved, List<CrowdSensor> flood, CrowdSensor month, Browsers browsers, string memory, TimeSpan stopped)
    {
        double[] acknowledged = [.. behaved.SelectMany(sensor => sensor.Milliseconds).Order()];
        Console.WriteLine($"well-behaved: {acknowledged.Length / span.TotalSeconds:F0} readings a second acknowledged, p50 "
            + $"{At(acknowledged, 0.5):F0} ms, p99 {At(acknowledged, 0.99):F0} ms, slowest {acknowledged[^1]:F0} ms");
        Console.WriteLine($"flooding credential: {flood.Sum(sensor => sensor.Acknowledged.Count) / span.TotalSeconds:F0} a second over "
            + $"{flood.Count(sensor => sensor.WasLetIn)} of {flood.Count} connections");
        Console.WriteLine($"month: {month.Acknowledged.Count} readings acknowledged");
        double[] pages = [.. browsers.Milliseconds.Order()];
        Console.WriteLine($"pages: {pages.Length / span.TotalSeconds:F0} a second, p50 {At(pages, 0.5):F0} ms, p99 {At(pages, 0.99):F0} ms; "
            + $"{browsers.AskedToWait} were asked to come again, {browsers.Failed} failed");
        Console.WriteLine($"memory at most {memory["VmHWM:".Length..].Trim()}; stopped within {stopped.TotalMilliseconds:F0} ms");
    }

    private static void Lost(string folder, List<CrowdSensor> sensors)
    {
        using var connection = new SqliteConnection($"Data Source={Path.Combine(folder, "readings.db")};Pooling=False");
        connection.Open();
        int lost = 0, told = 0;
        foreach (CrowdSensor sensor in sensors)
        {
            var stored = new HashSet<long>();
            using var command = new SqliteCommand(
                string.Create(CultureInfo.InvariantCulture, $"SELECT instant_ms FROM reading WHERE sensor = {sensor.Key} AND quantity = 1"),
                connection);
            using SqliteDataReader rows = command.ExecuteReader();
            while (rows.Read())
                stored.Add(rows.GetInt64(0));
            told += sensor.Acknowledged.Count;
            lost += sensor.Acknowledged.Count(at => !stored.Contains(at));
        }
        Console.WriteLine($"lost: {lost} of {told} acknowledged readings with a time");
    }

    private static double At(double[] ordered, double share) =>
        ordered.Length == 0 ? double.NaN : ordered[(int)Math.Min(ordered.Length - 1, share * ordered.Length)];
}
