using System.Globalization;
using FermentWatch.Intake.Tests;
using FermentWatch.Intake.Tests.Peers;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Storage.Readings;
using NodaTime;
using Xunit.Abstractions;

namespace FermentWatch.Faults.Tests;

/// <summary>The service is killed at random moments under QoS 1 load; what was acknowledged is stored.</summary>
public sealed class PowerCutTests(ITestOutputHelper output)
{
    private static readonly int _kills = Environment.GetEnvironmentVariable("FERMENTWATCH_TESTS_LONG") == "1" ? 200 : 10;

    [Fact]
    public async Task Kill_ThroughOurBroker_StoresTimedReadingsOnceAndBareOnesAsOftenAsTheyWereSentAtMost()
    {
        await using var host = new KilledHost(outsidePort: 0);
        await host.StartAsync();
        await using var publisher = new Publisher(host.MqttPort, "cellar", KilledHost.Password);
        await KillAgainAndAgainAsync(host, publisher, seed: 5, aKill: int.MaxValue / 2);
        await publisher.FinishAsync();
        await host.StopAsync();

        Stored stored = await Stored.ReadAsync(host.ReadingsFile);

        Report("our broker", publisher, stored);
        AssertNothingLost(publisher, stored, sentAgainByTheBroker: 0);
    }

    [Fact]
    public async Task Kill_ThroughAnOutsideBroker_StoresTimedReadingsOnceAndBareOnesAsOftenAsTheyWereSentAtMost()
    {
        await using Mosquitto broker = await Mosquitto.StartAsync();
        await using var host = new KilledHost(broker.Port);
        await host.StartAsync();
        // Its session must exist before anything is published, or the outside broker keeps nothing for it.
        await WaitForSessionAsync(broker);
        await using var publisher = new Publisher(broker.Port, "", "");
        await KillAgainAndAgainAsync(host, publisher, seed: 6, aKill: 400);
        await publisher.FinishAsync();
        Stored stored = await Stored.ReadUntilAsync(host.ReadingsFile, publisher.Numbers.Count);
        await host.StopAsync();

        Report("an outside broker", publisher, stored);
        // It sends what it saw no acknowledgement of once more to each connection we make.
        AssertNothingLost(publisher, stored, sentAgainByTheBroker: _kills);
    }

    private static async Task KillAgainAndAgainAsync(KilledHost host, Publisher publisher, int seed, int aKill)
    {
        var chance = new Random(seed);
        publisher.Allow(aKill);
        publisher.Start();
        for (int kill = 0; kill < _kills; kill++)
        {
            publisher.Allow(aKill);
            int before = publisher.Numbers.Count;
            await Eventually.TrueAsync(() => publisher.Numbers.Count > before + 100, "the publisher gets through");
            await Task.Delay(TimeSpan.FromMilliseconds(chance.Next(0, 300)), TimeProvider.System);
            await host.KillAsync();
            await host.StartAsync();
        }
    }

    private static async Task WaitForSessionAsync(Mosquitto broker) =>
        Assert.Contains("online", await MosquittoPublisher.HearAsync(broker.Port, "fermentwatch/service/status", 1), StringComparison.Ordinal);

    private static void AssertNothingLost(Publisher publisher, Stored stored, int sentAgainByTheBroker)
    {
        Assert.All(publisher.Numbers, entry => Assert.True(entry.Value.IsAcknowledged));
        Assert.All(publisher.Numbers.Keys.Where(Publisher.IsTimed), number => Assert.Equal(1, stored.Timed.GetValueOrDefault(number)));
        Assert.All(publisher.Numbers.Where(entry => !Publisher.IsTimed(entry.Key)), entry =>
            Assert.InRange(stored.Bare.GetValueOrDefault(entry.Key), 1, entry.Value.Times + sentAgainByTheBroker));
    }

    private void Report(string door, Publisher publisher, Stored stored) => output.WriteLine(string.Create(CultureInfo.InvariantCulture,
        $"{_kills} kills through {door}: sent {publisher.Numbers.Values.Sum(sent => sent.Times)} messages of {publisher.Numbers.Count} readings, "
        + $"acknowledged {publisher.Numbers.Values.Count(sent => sent.IsAcknowledged)}, stored {stored.Timed.Values.Sum()} timed of "
        + $"{stored.Timed.Count}, "
        + $"{stored.Bare.Values.Sum()} bare of {stored.Bare.Count}"));

    /// <summary>How often each number is in the log.</summary>
    private sealed record Stored(Dictionary<int, int> Timed, Dictionary<int, int> Bare)
    {
        private static readonly Instant _first = Instant.FromUnixTimeSeconds(0), _last = Instant.FromUtc(2100, 1, 1, 0, 0);

        public static async Task<Stored> ReadAsync(string file)
        {
            await using ReadingStore store = ReadingStore.Open(file);
            var timed = await store.Log.ReadAsync(1, Quantity.Temperature, _first, _last, CancellationToken.None);
            var bare = await store.Log.ReadAsync(1, Quantity.Millivolts, _first, _last, CancellationToken.None);
            Assert.All(timed, row => Assert.Equal(Publisher.SecondOf((int)row.Reading.Value), row.Reading.MeasuredAt.ToUnixTimeSeconds()));
            return new Stored(Count(timed), Count(bare));
        }

        public static async Task<Stored> ReadUntilAsync(string file, int readings)
        {
            long start = TimeProvider.System.GetTimestamp();
            while (true)
            {
                Stored stored = await ReadAsync(file);
                if (stored.Timed.Count + stored.Bare.Count >= readings || TimeProvider.System.GetElapsedTime(start) > TimeSpan.FromMinutes(5))
                    return stored;
                await Task.Delay(TimeSpan.FromMilliseconds(100), TimeProvider.System);
            }
        }

        private static Dictionary<int, int> Count(IReadOnlyList<JudgedReading> rows) =>
            rows.GroupBy(row => (int)row.Reading.Value).ToDictionary(number => number.Key, number => number.Count());
    }
}
