using System.Text;
using FermentWatch.Intake.Door;
using FermentWatch.Intake.Tests.Doubles;
using FermentWatch.Kitchen.Readings;
using Microsoft.Extensions.Time.Testing;
using NodaTime;

namespace FermentWatch.Intake.Tests.Door;

public sealed class MessageDoorTests
{
    private const string Temperature = "fermentwatch/sensor/cellar/temperature";
    private static readonly Instant _now = Instant.FromUtc(2026, 10, 4, 8, 0);

    [Fact]
    public async Task TakeAsync_RedeliveryWithTheSamePacketIdentifier_IsTheSameReading()
    {
        Household household = await WithCellarAsync();

        await TakeAsync(household, Temperature, "17.5", new Delivery(7, false), 0);
        DoorOutcome again = await TakeAsync(household, Temperature, "17.5", new Delivery(7, true), 5);

        Assert.Null(again.RefusedFor);
        Assert.Single(household.Log.Stored);
        Assert.Equal(1, household.Door.Counts.Redeliveries);
    }

    [Theory]
    [InlineData("the same value as a new message", "17.5", 8, false, 5, "device")]
    [InlineData("a redelivery whose first never reached us", "17.5", 8, true, 5, "device")]
    [InlineData("another value under the identifier", "17.6", 7, true, 5, "device")]
    [InlineData("the identifier used again much later", "17.5", 7, true, 601, "device")]
    [InlineData("the same identifier of another client", "17.5", 7, true, 5, "other")]
    public async Task TakeAsync_AnythingElse_IsAnotherReading(
        string what, string value, int packet, bool duplicate, int secondsLater, string client)
    {
        Household household = await WithCellarAsync();

        await TakeAsync(household, Temperature, "17.5", new Delivery(7, false), 0);
        await TakeAsync(household, Temperature, value, new Delivery((ushort)packet, duplicate), secondsLater, client);

        Assert.True(household.Log.Stored.Count == 2, what);
    }

    [Theory]
    [InlineData("2026-10-05T08:00:00Z", true)]
    [InlineData("2026-10-05T08:00:01Z", false)]
    [InlineData("9999-12-31T23:59:59Z", false)]
    [InlineData("2023-10-04T08:00:00Z", true)]
    [InlineData("2023-10-03T07:59:59Z", false)]
    [InlineData("1970-01-11T00:00:00Z", false)]
    public async Task TakeAsync_TimeOfASourceRule_IsBelievedADayAheadAndThreeYearsBack(string time, bool believed)
    {
        Household household = await WithCellarAsync();
        await household.Rules.AddAsync(
            new Kitchen.Sensors.SourceRule
            {
                Id = Guid.NewGuid(), TopicFilter = "hub/{device}", Quantity = Quantity.Temperature, ValuePointer = "/t", Unit = "Cel",
                    TimePointer = "/at",
                Time = Kitchen.Sensors.SourceTime.Iso8601, Payload = Kitchen.Sensors.SourcePayload.Json,
            },
            CancellationToken.None);

        DoorOutcome outcome = await TakeAsync(household, "hub/cellar", $$"""{"t":18,"at":"{{time}}"}""", null, 0);

        Assert.Equal(believed ? null : RejectReason.TimeNotBelieved, outcome.RefusedFor);
        Assert.Equal(believed ? 1 : 0, household.Log.Stored.Count);
        Assert.Equal(believed ? 0 : 1, household.Door.Counts.Rejected(RejectReason.TimeNotBelieved));
    }

    [Theory]
    [InlineData(253_402_300_799)]
    [InlineData(268_435_456)]
    [InlineData(268_435_455)]
    [InlineData(-268_435_455)]
    public async Task TakeAsync_SenMlTimeFarFromOurs_IsRefusedByNameAndSaysWhatWouldBeRight(long seconds)
    {
        Household household = await WithCellarAsync();

        DoorOutcome outcome = await TakeAsync(household, "fermentwatch/sensor/cellar", $$"""[{"u":"Cel","v":18,"t":{{seconds}}}]""", null, 0);

        Assert.Equal(RejectReason.TimeNotBelieved, outcome.RefusedFor);
        Assert.EndsWith("set the device's clock, or send no time.", Assert.Single(household.Log.Rejects).Explanation);
        Assert.Empty(household.Log.Stored);
    }

    [Fact]
    public async Task TakeAsync_CommitFailed_TheRedeliveryIsStored()
    {
        Household household = await WithCellarAsync();
        household.Log.FailNext(1);

        await Assert.ThrowsAsync<IOException>(() => TakeAsync(household, Temperature, "17.5", new Delivery(7, false), 0));
        await TakeAsync(household, Temperature, "17.5", new Delivery(7, true), 1);

        Assert.Single(household.Log.Stored);
    }

    [Fact]
    public async Task TakeAsync_RelativePackRedelivered_IsStoredOnce()
    {
        Household household = await WithCellarAsync();
        const string Pack = """[{"n":"cellar","u":"Cel","t":-60,"v":17.5},{"n":"cellar","u":"Cel","v":17.4}]""";

        await TakeAsync(household, "fermentwatch/sensor/cellar", Pack, new Delivery(7, false), 0);
        await TakeAsync(household, "fermentwatch/sensor/cellar", Pack, new Delivery(7, true), 3);

        Assert.Equal([17.5, 17.4], household.Log.Stored.Select(reading => reading.Value));
    }

    [Fact]
    public async Task TakeAsync_TimedPackSentTwice_IsLeftToTheKeyOfTheLog()
    {
        Household household = await WithCellarAsync();
        const string Pack = """[{"n":"cellar","u":"Cel","t":1790841600,"v":17.5}]""";

        await TakeAsync(household, "fermentwatch/sensor/cellar", Pack, null, 0);
        await TakeAsync(household, "fermentwatch/sensor/cellar", Pack, null, 3600);
        await TakeAsync(household, "fermentwatch/sensor/cellar", Pack.Replace("17.5", "18.5", StringComparison.Ordinal), null, 7200);

        Assert.Equal([17.5], household.Log.Stored.Select(reading => reading.Value));
        Assert.Equal((1, 1, 1), (household.Door.Counts.Stored, household.Door.Counts.Duplicates, household.Door.Counts.Conflicts));
    }

    [Fact]
    public async Task TakeAsync_PartOfAPackIsWrong_TheRestIsStoredAndTheMessageIsNotRefused()
    {
        Household household = await WithCellarAsync();

        DoorOutcome outcome = await TakeAsync(household, "fermentwatch/sensor/cellar",
            """[{"n":"a","u":"Cel","v":17.5},{"n":"a","u":"lux","v":3}]""", null, 0);

        Assert.Null(outcome.RefusedFor);
        Assert.Equal([RejectReason.UnknownUnit], outcome.Rejected);
        Assert.Single(household.Log.Stored);
    }

    [Fact]
    public async Task TakeAsync_SensorRemoved_IsUnknownAfterTenSeconds()
    {
        var time = new FakeTimeProvider();
        Household household = await WithCellarAsync(time);
        await TakeAsync(household, Temperature, "17.5", null, 0);
        await household.Book.RemoveAsync((await household.Book.AllAsync(CancellationToken.None))[0].Id, _now, CancellationToken.None);

        time.Advance(SensorDirectory.Remembered);
        DoorOutcome outcome = await TakeAsync(household, Temperature, "17.6", null, 11);

        Assert.Equal(RejectReason.UnknownSensor, outcome.RefusedFor);
    }

    [Fact]
    public async Task TakeAsync_ManyReadings_AskTheBookOnce()
    {
        Household household = await WithCellarAsync(new FakeTimeProvider());

        for (int i = 0; i < 100; i++)
            await TakeAsync(household, Temperature, "17.5", null, i);

        Assert.Equal((100, 1), (household.Log.Stored.Count, household.Book.Queries));
    }

    [Fact]
    public async Task TakeAsync_SensorAddedMeanwhile_WorksAtOnce()
    {
        var household = new Household();
        Assert.Equal(RejectReason.UnknownSensor, (await TakeAsync(household, Temperature, "17.5", null, 0)).RefusedFor);

        await household.AddSensorAsync("cellar");
        await TakeAsync(household, Temperature, "17.5", null, 1);

        Assert.Single(household.Log.Stored);
    }

    [Fact]
    public async Task TakeAsync_StatusSaidAgain_KeepsTheTimeSinceWhenItHolds()
    {
        Household household = await WithCellarAsync();

        await TakeAsync(household, "fermentwatch/sensor/cellar/status", "online", null, 0);
        await TakeAsync(household, "fermentwatch/sensor/cellar/status", "online", null, 60);
        Assert.Equal(new SensorPresence(true, _now), household.Door.Presence.Of(1));
        await TakeAsync(household, "fermentwatch/sensor/cellar/status", "offline\n", null, 90);

        Assert.Equal(new SensorPresence(false, _now + Duration.FromSeconds(90)), household.Door.Presence.Of(1));
        Assert.Null(household.Door.Presence.Of(2));
    }

    private static async Task<Household> WithCellarAsync(TimeProvider? time = null)
    {
        var household = new Household(time);
        await household.AddSensorAsync("cellar");
        return household;
    }

    private static Task<DoorOutcome> TakeAsync(
        Household household, string topic, string payload, Delivery? delivery, int secondsLater, string client = "device") =>
        household.Door.TakeAsync(
            new IncomingMessage(client, topic, Encoding.UTF8.GetBytes(payload), _now + Duration.FromSeconds(secondsLater), delivery),
            CancellationToken.None);
}
