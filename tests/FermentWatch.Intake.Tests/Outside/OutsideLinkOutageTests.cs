using System.Globalization;
using FermentWatch.Intake.Tests.Peers;
using MQTTnet;
using MQTTnet.Exceptions;
using MQTTnet.Protocol;
using Xunit.Abstractions;

namespace FermentWatch.Intake.Tests.Outside;

/// <summary>The outside broker is killed under load and stays away; nothing it acknowledged to the publisher is lost.</summary>
public sealed class OutsideLinkOutageTests(ITestOutputHelper output)
{
    private static readonly bool _long = Environment.GetEnvironmentVariable("FERMENTWATCH_TESTS_LONG") == "1";

    // The link looks every second; the rest is patience with a machine that runs other tests beside.
    private static readonly TimeSpan _soon = TimeSpan.FromSeconds(20);

    [Fact]
    public async Task Killed_AndAwayForAWhile_LosesNothingAcknowledgedAndIsBackSoon()
    {
        var away = TimeSpan.FromSeconds(_long ? 60 : 8);
        await using Mosquitto broker = await Mosquitto.StartAsync();
        await using LinkUnderTest link = await LinkUnderTest.StartAsync(broker);
        var acknowledged = new List<double>();

        acknowledged.AddRange(await PublishUntilBrokenAsync(broker, 0, 300));
        await broker.KillAsync();
        await Eventually.TrueAsync(() => !link.Link.IsConnected, "the link has noticed");
        long before = link.Link.Counts.Attempts;
        await Task.Delay(away, TimeProvider.System);
        long attempts = link.Link.Counts.Attempts - before;
        await broker.StartAgainAsync();
        long returned = TimeProvider.System.GetTimestamp();
        await link.ConnectedAsync();
        TimeSpan back = TimeProvider.System.GetElapsedTime(returned);
        acknowledged.AddRange(await PublishUntilBrokenAsync(broker, 10_000, 50));
        await Eventually.TrueAsync(() => acknowledged.All(link.Values.ToHashSet().Contains), "all that was acknowledged is stored");

        output.WriteLine(
            $"away {away.TotalSeconds:F0} s: acknowledged to the publisher {acknowledged.Count}, stored {link.Values.Count}, "
            + $"back after {back.TotalSeconds:F1} s, {attempts} tries meanwhile");
        Assert.InRange(back, TimeSpan.Zero, _soon);
        // While nobody is there it looks and does not try; one try may fall into the broker's end.
        Assert.InRange(attempts, 0, 1);
        Assert.Single(link.Log.Entries, entry => entry.Id == 2102);
    }

    [Fact]
    public async Task Killed_FiveTimesSoonAfterItsReturn_IsTriedAtMostTwiceEachAndBackSoon()
    {
        await using Mosquitto broker = await Mosquitto.StartAsync();
        await using LinkUnderTest link = await LinkUnderTest.StartAsync(broker);
        var back = new List<double>();
        for (int i = 0; i < 5; i++)
        {
            await broker.KillAsync();
            await Eventually.TrueAsync(() => !link.Link.IsConnected, "the link has noticed");
            await Task.Delay(TimeSpan.FromSeconds(2.5), TimeProvider.System);
            await broker.StartAgainAsync();
            long returned = TimeProvider.System.GetTimestamp();
            await link.ConnectedAsync();
            back.Add(TimeProvider.System.GetElapsedTime(returned).TotalSeconds);
        }

        output.WriteLine($"back after {string.Join(", ", back.Select(seconds => seconds.ToString("F1", CultureInfo.InvariantCulture)))} s, "
            + $"{link.Link.Counts.Attempts} tries");
        Assert.All(back, seconds => Assert.InRange(seconds, 0, _soon.TotalSeconds));
        Assert.InRange(link.Link.Counts.Attempts, 6, 11);
    }

    /// <summary>Publishes values one after the other and returns those that were acknowledged.</summary>
    private static async Task<List<double>> PublishUntilBrokenAsync(Mosquitto broker, int first, int count)
    {
        var acknowledged = new List<double>();
        using IMqttClient client = new MqttClientFactory().CreateMqttClient();
        await client.ConnectAsync(new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", broker.Port).WithClientId("publisher").Build());
        for (int i = 0; i < count; i++)
        {
            double value = first + i;
            try
            {
                MqttClientPublishResult result = await client.PublishAsync(new MqttApplicationMessageBuilder()
                    .WithTopic("fermentwatch/sensor/cellar/millivolts")
                    .WithPayload(value.ToString(CultureInfo.InvariantCulture))
                    .WithQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce)
                    .Build());
                if (result.IsSuccess)
                    acknowledged.Add(value);
            }
            catch (MqttCommunicationException)
            {
                return acknowledged;
            }
        }
        return acknowledged;
    }
}
