using System.Globalization;
using System.Net;
using System.Net.Http.Json;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Storage;
using FermentWatch.TestKit;
using Microsoft.Extensions.DependencyInjection;
using NodaTime.Extensions;

namespace FermentWatch.Benchmarks.Crowd;

/// <summary>
/// What a household of 100 jars and 20 sensors that report each minute costs a real service process by the machine's clock: share of a
/// processor, memory, bytes written, and how long an entered pH takes beside the least that any answer takes.
/// </summary>
internal static class HouseholdBenchmark
{
    private const int Entries = 200;
    private static readonly TimeSpan BetweenEntries = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan LongestStart = TimeSpan.FromMinutes(5);

    /// <param name="span">How long the household is left alone; half an hour holds two closed quarters.</param>
    public static async Task RunAsync(TimeSpan span)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("fermentwatch-household-");
        try
        {
            IReadOnlyList<(Sensor Sensor, string Password)> sensors = await FillAsync(folder.FullName);
            await using ServiceProcess service = await ServiceProcess.Start(folder.FullName).UpAsync();
            using HttpClient person = await Browsers.PersonAsync(service, folder.FullName);
            using var ends = new CancellationTokenSource();
            Task[] reporting = [.. sensors.Select(sensor => Task.Run(() => new CrowdSensor(service.MqttPort, sensor).EachMinuteAsync(ends.Token)))];
            await ForecastAsync(person);

            (double processor, long written) = Used(service);
            await Task.Delay(span, TimeProvider.System);
            (double processorAfter, long writtenAfter) = Used(service);
            Console.WriteLine($"left alone for {span.TotalMinutes:F0} minutes: {100 * (processorAfter - processor) / span.TotalSeconds:F1} % of a "
                + $"processor, {(writtenAfter - written) / span.TotalDays / 1e9:F2} GB written a day; {Memory(service)}");
            string health = await (await person.GetAsync("/healthz/ready")).Content.ReadAsStringAsync();
            if (!health.Contains("\"ready\":true", StringComparison.Ordinal))
                throw new InvalidOperationException(health);
            await EnterAsync(person);
            Console.WriteLine($"after the entries: {Memory(service)}");
            await ends.CancelAsync();
            await Task.WhenAll(reporting);
            await service.StopAsync();
        }
        finally
        {
            folder.Delete(true);
        }
    }

    private static async Task<IReadOnlyList<(Sensor Sensor, string Password)>> FillAsync(string folder)
    {
        await using ServiceProvider services = QuarterBenchmark.Services(folder);
        services.OpenStorage();
        return await HundredJars.FillAsync(services, TimeProvider.System.GetUtcNow().ToInstant());
    }

    private static async Task ForecastAsync(HttpClient person)
    {
        long start = TimeProvider.System.GetTimestamp();
        for (int jar = 1; jar <= HundredJars.Jars; jar++)
            while ((await person.GetAsync($"/api/v1/jars/{jar}/forecast")).StatusCode != HttpStatusCode.OK)
            {
                if (TimeProvider.System.GetElapsedTime(start) > LongestStart)
                    throw new TimeoutException($"Jar {jar} had no forecast within {LongestStart}.");
                await Task.Delay(TimeSpan.FromSeconds(1), TimeProvider.System);
            }
        Console.WriteLine($"every jar has its first forecast {TimeProvider.System.GetElapsedTime(start).TotalSeconds:F0} s after the start");
    }

    private static async Task EnterAsync(HttpClient person)
    {
        double[] entered = new double[Entries], alive = new double[Entries];
        for (int entry = 0; entry < Entries; entry++)
        {
            alive[entry] = await TimeAsync(() => person.GetAsync("/healthz/live"));
            entered[entry] = await TimeAsync(() => person.PostAsJsonAsync(
                $"/api/v1/jars/{1 + (entry % HundredJars.Jars)}/ph", new { ph = "3.6", method = "meter", checked_in_buffer = true }));
            await Task.Delay(BetweenEntries, TimeProvider.System);
        }
        Array.Sort(entered);
        Array.Sort(alive);
        Console.WriteLine($"a pH entered: p50 {entered[Entries / 2]:F0} ms, p99 {entered[Entries * 99 / 100]:F0} ms; the least answer "
            + $"(healthz/live): p50 {alive[Entries / 2]:F1} ms, p99 {alive[Entries * 99 / 100]:F1} ms");
    }

    private static async Task<double> TimeAsync(Func<Task<HttpResponseMessage>> ask)
    {
        long start = TimeProvider.System.GetTimestamp();
        using HttpResponseMessage answer = await ask();
        answer.EnsureSuccessStatusCode();
        return TimeProvider.System.GetElapsedTime(start).TotalMilliseconds;
    }

    private static (double ProcessorSeconds, long Written) Used(ServiceProcess service)
    {
        service.Process.Refresh();
        string written = File.ReadLines($"/proc/{service.Process.Id}/io").First(line => line.StartsWith("write_bytes", StringComparison.Ordinal));
        return (service.Process.TotalProcessorTime.TotalSeconds, long.Parse(written.Split(' ')[1], CultureInfo.InvariantCulture));
    }

    private static string Memory(ServiceProcess service) => string.Join(", ", File.ReadLines($"/proc/{service.Process.Id}/status")
        .Where(line => line.StartsWith("VmRSS", StringComparison.Ordinal) || line.StartsWith("VmHWM", StringComparison.Ordinal))
        .Select(line => line.Replace("VmRSS:", "resident", StringComparison.Ordinal).Replace("VmHWM:", "at most", StringComparison.Ordinal)
            .Replace("\t", " ", StringComparison.Ordinal)));
}
