using System.Collections.Concurrent;
using System.Globalization;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Storage;
using FermentWatch.TestKit;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Xunit.Abstractions;
using Host = FermentWatch.TestKit.TestHost;

namespace FermentWatch.Scenario.Tests;

/// <summary>The product killed while Debian's mosquitto_pub sends at QoS 1, one process a message: its exit code is the acknowledgement.</summary>
public sealed class PowerCutTests(ITestOutputHelper output)
{
    private const int Senders = 2;
    private static readonly Instant Start = Instant.FromUtc(2026, 10, 1, 6, 0);
    private readonly ConcurrentBag<int> _timed = [];
    private readonly ConcurrentBag<int> _bare = [];
    private int _sent;

    [Fact]
    public async Task Kill_WhileMosquittoPubSends_EveryAcknowledgedReadingIsStored()
    {
        using var folder = new TemporaryFolder();
        Device? device = null;
        int kills = LongRun.Count(8, 40), port = 0;
        for (int i = 0; i < kills; i++)
        {
            Host host = await Host.StartAsync(folder.Path, Start, "--mqtt-port", port.ToString(CultureInfo.InvariantCulture));
            port = host.MqttPort;
            device ??= await Device.AddAsync(host, "counter");
            await SendUntilKilledAsync(device with { Host = host }, host, new Random(i));
        }
        (int timedRows, HashSet<int> timed, int bareRows, HashSet<int> bare) = await StoredAsync(folder.Path);
        output.WriteLine($"{kills} kills; sent {_sent}; timed: acknowledged {_timed.Count}, stored {timedRows}; bare: acknowledged {_bare.Count}, "
            + $"stored {bareRows}");
        Assert.True(_timed.Count > kills && _bare.Count > kills, "too few were acknowledged for the test to say anything");
        Assert.Equal(timedRows, timed.Count);
        Assert.Empty(_timed.Except(timed));
        Assert.Empty(_bare.Except(bare));
    }

    private async Task SendUntilKilledAsync(Device device, Host host, Random random)
    {
        using var stop = new CancellationTokenSource();
        Task[] senders = [.. Enumerable.Range(0, Senders)
            .SelectMany(_ => new[] { SendTimedAsync(device, stop.Token), SendBareAsync(device, stop.Token) })];
        int enough = Volatile.Read(ref _sent) + random.Next(8, 40);
        while (Volatile.Read(ref _sent) < enough)
            await Task.Delay(TimeSpan.FromMilliseconds(5), TimeProvider.System);
        await host.KillAsync();
        await stop.CancelAsync();
        await Task.WhenAll(senders);
        await host.DisposeAsync();
    }

    private async Task SendTimedAsync(Device device, CancellationToken stop)
    {
        while (!stop.IsCancellationRequested)
        {
            int number = Interlocked.Increment(ref _sent);
            if ((await device.SendPackAsync([(Start - Duration.FromDays(1) + Duration.FromSeconds(number), 20)])).ExitCode == 0)
                _timed.Add(number);
        }
    }

    private async Task SendBareAsync(Device device, CancellationToken stop)
    {
        while (!stop.IsCancellationRequested)
        {
            int number = Interlocked.Increment(ref _sent);
            if ((await device.SendAsync(number / 1000.0)).ExitCode == 0)
                _bare.Add(number);
        }
    }

    private static async Task<(int TimedRows, HashSet<int> Timed, int BareRows, HashSet<int> Bare)> StoredAsync(string folder)
    {
        var services = new ServiceCollection();
        services.AddLogging();
        services.AddSingleton(TimeProvider.System);
        services.AddFermentWatchStorage(new StorageOptions { Folder = folder });
        await using ServiceProvider provider = services.BuildServiceProvider();
        provider.OpenStorage();
        IReadOnlyList<JudgedReading> rows = await provider.GetRequiredService<IReadingLog>()
            .ReadAsync(1, Quantity.Temperature, Start - Duration.FromDays(2), Start + Duration.FromDays(1), default);
        var timed = rows.Where(row => row.Reading.TimeSource == TimeSource.Payload)
            .Select(row => (int)(row.Reading.MeasuredAt - (Start - Duration.FromDays(1))).TotalSeconds).ToList();
        var bare = rows.Where(row => row.Reading.TimeSource == TimeSource.Arrival).Select(row => (int)Math.Round(row.Reading.Value * 1000)).ToList();
        return (timed.Count, [.. timed], bare.Count, [.. bare]);
    }
}
