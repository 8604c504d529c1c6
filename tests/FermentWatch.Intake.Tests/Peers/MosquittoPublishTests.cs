using FermentWatch.Intake.Tests.Embedded;
using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Intake.Tests.Peers;

public sealed class MosquittoPublishTests
{
    [Theory]
    [InlineData("mqttv311")]
    [InlineData("mqttv5")]
    public async Task Publish_BareNumberByARealPeer_IsStored(string version)
    {
        await using var broker = await BrokerUnderTest.StartAsync();
        (_, string password) = await broker.Household.AddSensorAsync("cellar");

        var (exit, error) = await MosquittoPublisher.RunAsync(
            "-h", "127.0.0.1", "-p", $"{broker.Broker.Port}", "-V", version, "-i", "cellar", "-u", "cellar", "-P", password,
            "-q", "1", "-t", "fermentwatch/sensor/cellar/temperature", "-m", "17.25");

        Assert.Equal((0, ""), (exit, error));
        Assert.Equal(
            [(Quantity.Temperature, 17.25, TimeSource.Arrival)],
            broker.Stored.Select(reading => (reading.Quantity, reading.Value, reading.TimeSource)));
    }

    [Fact]
    public async Task Publish_PackWithPastTimesByARealPeer_FillsHistory()
    {
        await using var broker = await BrokerUnderTest.StartAsync();
        (_, string password) = await broker.Household.AddSensorAsync("cellar");

        var (exit, error) = await MosquittoPublisher.RunAsync(
            "-h", "127.0.0.1", "-p", $"{broker.Broker.Port}", "-i", "cellar", "-u", "cellar", "-P", password,
            "-q", "1", "-t", "fermentwatch/sensor/cellar", "-m",
            """
            [
              {"bn":"cellar:","bt":1790841600,"bu":"Cel","n":"temperature","v":17.5},
              {"n":"temperature","t":-900,"v":17.25},
              {"n":"humidity","u":"%RH","v":70}
            ]
            """);

        Assert.Equal((0, ""), (exit, error));
        Instant baseTime = Instant.FromUtc(2026, 10, 1, 8, 0);
        Assert.Equal(
            [
                (Quantity.Temperature, 17.5, baseTime),
                (Quantity.Temperature, 17.25, baseTime - Duration.FromMinutes(15)),
                (Quantity.Humidity, 70, baseTime),
            ],
            broker.Stored.Select(reading => (reading.Quantity, reading.Value, reading.MeasuredAt)));
        Assert.All(broker.Stored, reading => Assert.Equal(TimeSource.Payload, reading.TimeSource));
    }

    [Fact]
    public async Task Publish_WrongPasswordByARealPeer_IsRefused()
    {
        await using var broker = await BrokerUnderTest.StartAsync();
        await broker.Household.AddSensorAsync("cellar");

        var (exit, error) = await MosquittoPublisher.RunAsync(
            "-h", "127.0.0.1", "-p", $"{broker.Broker.Port}", "-i", "cellar", "-u", "cellar", "-P", "guess",
            "-q", "1", "-t", "fermentwatch/sensor/cellar/temperature", "-m", "17.25");

        Assert.NotEqual(0, exit);
        Assert.Contains("user name or password", error, StringComparison.OrdinalIgnoreCase);
    }
}
