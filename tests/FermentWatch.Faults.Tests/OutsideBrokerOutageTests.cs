using System.Globalization;
using FermentWatch.Intake.Tests;
using FermentWatch.Intake.Tests.Peers;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Storage.Readings;
using MQTTnet;
using MQTTnet.Protocol;
using NodaTime;
using Xunit.Abstractions;

namespace FermentWatch.Faults.Tests;

/// <summary>
/// The product at a household's mosquitto: that is stopped for a while, the product is killed while it is sent to, and then the
/// broker is killed. (A killed mosquitto 2.0 itself forgets what it has not saved: up to a second, measured here.)
/// </summary>
public sealed class OutsideBrokerOutageTests(ITestOutputHelper output)
{
    private static readonly TimeSpan _away = TimeSpan.FromSeconds(Environment.GetEnvironmentVariable("FERMENTWATCH_TESTS_LONG") == "1" ? 60 : 6);

    // The product looks every second; the rest is patience with a machine that runs other tests beside.
    private static readonly TimeSpan _soon = TimeSpan.FromSeconds(20);

    [Fact]
    public async Task BrokerStoppedProductKilledBrokerKilled_Anyhow_LosesNothingAcknowledgedAndIsBackSoon()
    {
        await using Mosquitto broker = await Mosquitto.StartAsync();
        await using var product = new ProductAtBroker(broker.Port);
        await product.CommandAsync("sensor", "add", "cellar");
        product.Start();
        await Eventually.TrueAsync(() => product.Connects == 1, "the product is connected");

        await PublishAsync(broker, 0, 300);
        await broker.StopAsync();
        TimeSpan backFromStop = await AwayAsync(broker, product);

        Task sending = PublishAsync(broker, 1_000, 2_000);
        await product.KillAsync();
        await sending;
        product.Start();
        await Eventually.TrueAsync(() => product.Connects == 3, "the product is connected after its own end");
        await StoredAsync(product, 2_300);

        await broker.KillAsync();
        TimeSpan backFromKill = await AwayAsync(broker, product);
        await PublishAsync(broker, 10_000, 20);

        Dictionary<double, int> stored = await StoredAsync(product, 2_320);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"away {_away.TotalSeconds:0} s twice, back after {backFromStop.TotalSeconds:0.0} and {backFromKill.TotalSeconds:0.0} s; connected "
            + $"{product.Connects} times; sent and acknowledged 2320, stored {stored.Values.Sum()} of {stored.Count}"));
        Assert.InRange(backFromStop, TimeSpan.Zero, _soon);
        Assert.InRange(backFromKill, TimeSpan.Zero, _soon);
        Assert.Equal(2_320, stored.Count);
        // A bare number that the kill left unacknowledged is sent once more.
        Assert.All(stored.Values, times => Assert.InRange(times, 1, 2));
        Assert.Equal(4, product.Connects);
    }

    /// <summary>Leaves the broker away for a while and gives how long after its return the product is connected again.</summary>
    private static async Task<TimeSpan> AwayAsync(Mosquitto broker, ProductAtBroker product)
    {
        int before = product.Connects;
        await Task.Delay(_away, TimeProvider.System);
        await broker.StartAgainAsync();
        long returned = TimeProvider.System.GetTimestamp();
        await Eventually.TrueAsync(() => product.Connects == before + 1, "the product is connected again");
        return TimeProvider.System.GetElapsedTime(returned);
    }

    /// <summary>Publishes values one after the other; each is acknowledged.</summary>
    private static async Task PublishAsync(Mosquitto broker, int first, int count)
    {
        using IMqttClient client = new MqttClientFactory().CreateMqttClient();
        await client.ConnectAsync(new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", broker.Port).WithClientId("publisher").Build());
        for (int i = 0; i < count; i++)
        {
            MqttClientPublishResult result = await client.PublishAsync(new MqttApplicationMessageBuilder()
                .WithTopic("fermentwatch/sensor/cellar/millivolts")
                .WithPayload((first + i).ToString(CultureInfo.InvariantCulture))
                .WithQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce)
                .Build());
            Assert.True(result.IsSuccess, result.ReasonString);
        }
        await client.DisconnectAsync();
    }

    private static async Task<Dictionary<double, int>> StoredAsync(ProductAtBroker product, int readings)
    {
        Dictionary<double, int> stored = [];
        await Eventually.TrueAsync(async () =>
        {
            await using ReadingStore store = ReadingStore.Open(product.ReadingsFile);
            stored = (await store.Log.ReadAsync(1, Quantity.Millivolts, Instant.FromUnixTimeSeconds(0), Instant.FromUtc(2100, 1, 1, 0, 0),
                CancellationToken.None))
                .GroupBy(row => row.Reading.Value).ToDictionary(rows => rows.Key, rows => rows.Count());
            return stored.Count >= readings;
        }, $"{readings} readings are stored", 60);
        return stored;
    }
}
