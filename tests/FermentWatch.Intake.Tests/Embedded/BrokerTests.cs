using FermentWatch.Intake.Embedded;
using FermentWatch.Kitchen.Readings;
using Microsoft.Extensions.Time.Testing;
using MQTTnet;
using MQTTnet.Formatter;
using NodaTime;

namespace FermentWatch.Intake.Tests.Embedded;

public sealed partial class BrokerTests
{
    private const string Cellar = "fermentwatch/sensor/cellar";

    [Fact]
    public async Task Publish_BareNumber_IsStoredWithItsArrivalBeforeItIsAcknowledged()
    {
        var time = new FakeTimeProvider(new DateTimeOffset(2026, 10, 4, 8, 0, 0, 123, TimeSpan.Zero));
        await using var broker = await BrokerUnderTest.StartAsync(time);
        IMqttClient sensor = await broker.ConnectSensorAsync("cellar");

        MqttClientPublishResult result = await BrokerUnderTest.PublishAsync(sensor, $"{Cellar}/temperature", "17.5");

        Assert.True(result.IsSuccess);
        Instant now = Instant.FromUtc(2026, 10, 4, 8, 0) + Duration.FromMilliseconds(123);
        Assert.Equal([new Reading(1, Quantity.Temperature, 17.5, now, now, TimeSource.Arrival)], broker.Stored);
    }

    [Fact]
    public async Task Publish_WhileTheCommitIsHeldUp_IsNotAcknowledged()
    {
        await using var broker = await BrokerUnderTest.StartAsync();
        IMqttClient sensor = await broker.ConnectSensorAsync("cellar");
        var held = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        var reached = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        broker.Household.Log.BeforeCommit = () =>
        {
            reached.TrySetResult();
            return held.Task;
        };

        Task<MqttClientPublishResult> publish = BrokerUnderTest.PublishAsync(sensor, $"{Cellar}/temperature", "17.5");
        await reached.Task;
        Assert.False(publish.IsCompleted);
        Assert.Empty(broker.Stored);
        held.SetResult();

        Assert.True((await publish).IsSuccess);
        Assert.Single(broker.Stored);
    }

    [Fact]
    public async Task Publish_WholeWindow_IsHandedOnWithoutWaitingForEachCommitAndAcknowledgedAfterwards()
    {
        await using var broker = await BrokerUnderTest.StartAsync();
        IMqttClient sensor = await broker.ConnectSensorAsync("cellar");
        var held = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        int waiting = 0;
        broker.Household.Log.BeforeCommit = () =>
        {
            Interlocked.Increment(ref waiting);
            return held.Task;
        };

        Task<MqttClientPublishResult>[] window =
            [.. Enumerable.Range(0, 50).Select(i => BrokerUnderTest.PublishAsync(sensor, $"{Cellar}/temperature", $"{i}"))];
        await Eventually.TrueAsync(() => Volatile.Read(ref waiting) == 50, "the whole window is at the log");
        Assert.DoesNotContain(window, publish => publish.IsCompleted);
        held.SetResult();

        Assert.All(await Task.WhenAll(window), result => Assert.True(result.IsSuccess));
        Assert.Equal(50, broker.Stored.Count);
    }

    [Theory]
    [InlineData(MqttProtocolVersion.V311)]
    [InlineData(MqttProtocolVersion.V500)]
    public async Task Publish_LogCannotBeWritten_DisconnectsAndTheReadingComesInOnceItCan(MqttProtocolVersion version)
    {
        await using var broker = await BrokerUnderTest.StartAsync();
        broker.Log.Expected.Add(2005);
        (_, string password) = await broker.Household.AddSensorAsync("cellar");
        (IMqttClient sensor, _) = await broker.TryConnectAsync("cellar", password, version: version);
        broker.Household.Log.FailNext(1);

        await Assert.ThrowsAnyAsync<Exception>(() => BrokerUnderTest.PublishAsync(sensor, $"{Cellar}/temperature", "17.5"));
        Assert.Empty(broker.Stored);
        IMqttClient again = await broker.ConnectAsync("cellar", password);
        await BrokerUnderTest.PublishAsync(again, $"{Cellar}/temperature", "17.5");

        Assert.Equal([17.5], broker.Stored.Select(reading => reading.Value));
        Assert.Equal([2005, 2006], broker.Log.Entries.Select(entry => entry.Id).Where(id => id is 2005 or 2006));
    }

    [Fact]
    public async Task Publish_RetainFlag_IsAnOrdinaryReadingAndIsNotKeptByTheBroker()
    {
        await using var broker = await BrokerUnderTest.StartAsync();
        IMqttClient sensor = await broker.ConnectSensorAsync("cellar");

        await BrokerUnderTest.PublishAsync(sensor, $"{Cellar}/temperature", "17.5", retain: true);
        await BrokerUnderTest.PublishAsync(sensor, $"{Cellar}/status", "online", retain: true);
        string hub = await broker.Household.AddGatewayAsync("hub", "#");
        List<string> heard = await ListenAsync(await broker.ConnectAsync("hub", hub), "fermentwatch/sensor/#", 1);

        Assert.Equal([17.5], broker.Stored.Select(reading => reading.Value));
        Assert.Equal([$"{Cellar}/status online retained"], heard);
        Assert.True(broker.Household.Door.Presence.Of(1)!.IsOnline);
    }

    [Fact]
    public async Task Publish_TopicOfAnotherSensor_IsRefusedCountedAndSaidOnce()
    {
        await using var broker = await BrokerUnderTest.StartAsync();
        await broker.Household.AddSensorAsync("crock-7");
        IMqttClient sensor = await broker.ConnectSensorAsync("cellar");

        for (int i = 0; i < 3; i++)
        {
            MqttClientPublishResult result = await BrokerUnderTest.PublishAsync(sensor, "fermentwatch/sensor/crock-7/ph", "3.6");
            Assert.Equal(MqttClientPublishReasonCode.NotAuthorized, result.ReasonCode);
        }

        Assert.Empty(broker.Stored);
        Assert.Equal(3, broker.Broker.Counts.Refused(RefusalReason.PublishNotAllowed));
        Assert.Equal(3, broker.Household.Door.Counts.Rejected(RejectReason.NotAllowed));
        Assert.Single(broker.Log.Entries, entry => entry.Id == 2004);
    }

    [Fact]
    public async Task Publish_GatewayUnderItsFilter_MaySpeakForSensors()
    {
        await using var broker = await BrokerUnderTest.StartAsync();
        await broker.Household.AddSensorAsync("cellar");
        string hub = await broker.Household.AddGatewayAsync("hub", "fermentwatch/sensor/+/temperature");
        IMqttClient gateway = await broker.ConnectAsync("hub", hub);

        Assert.True((await BrokerUnderTest.PublishAsync(gateway, $"{Cellar}/temperature", "17.5")).IsSuccess);
        Assert.False((await BrokerUnderTest.PublishAsync(gateway, $"{Cellar}/ph", "3.5")).IsSuccess);

        Assert.Equal([17.5], broker.Stored.Select(reading => reading.Value));
    }

    [Fact]
    public async Task Publish_TooLarge_IsRefusedAndTheConnectionStays()
    {
        await using var broker = await BrokerUnderTest.StartAsync(set: options => options.MaxPayloadBytes = 1024);
        IMqttClient sensor = await broker.ConnectSensorAsync("cellar");

        MqttClientPublishResult large = await BrokerUnderTest.PublishAsync(sensor, Cellar, new string('[', 1025));
        MqttClientPublishResult right = await BrokerUnderTest.PublishAsync(sensor, $"{Cellar}/temperature", "17.5");

        Assert.Equal(MqttClientPublishReasonCode.QuotaExceeded, large.ReasonCode);
        Assert.True(right.IsSuccess);
        Assert.Equal([RejectReason.TooLarge], broker.Household.Log.Rejects.Select(reject => reject.Reason));
    }

    [Theory]
    [InlineData("#", false)]
    [InlineData("fermentwatch/sensor/+/temperature", false)]
    [InlineData("fermentwatch/sensor/crock-7/#", false)]
    [InlineData("fermentwatch/jar/+/state", false)]
    [InlineData("$share/g/fermentwatch/sensor/cellar/#", false)]
    [InlineData("fermentwatch/sensor/cellar/#", true)]
    public async Task Subscribe_Sensor_HearsItsOwnTopicsOnly(string filter, bool allowed)
    {
        await using var broker = await BrokerUnderTest.StartAsync();
        IMqttClient sensor = await broker.ConnectSensorAsync("cellar");

        MqttClientSubscribeResult result = await sensor.SubscribeAsync(filter);

        Assert.Equal(allowed, result.Items.Single().ResultCode == MqttClientSubscribeResultCode.GrantedQoS0);
    }

    [Theory]
    [InlineData("fermentwatch/sensor/crock-7/ph", "3.6")]
    [InlineData("fermentwatch/sensor/cellar/pressure", "3.6")]
    public async Task Publish_RefusedOverMqtt311_ClosesTheConnectionInsteadOfSayingThatItWasTaken(string topic, string payload)
    {
        await using var broker = await BrokerUnderTest.StartAsync();
        await broker.Household.AddSensorAsync("crock-7");
        (_, string password) = await broker.Household.AddSensorAsync("cellar");
        (IMqttClient sensor, _) = await broker.TryConnectAsync("cellar", password, version: MqttProtocolVersion.V311);

        await Assert.ThrowsAnyAsync<Exception>(() => BrokerUnderTest.PublishAsync(sensor, topic, payload).WaitAsync(TimeSpan.FromSeconds(20)));

        await Eventually.TrueAsync(() => !sensor.IsConnected, "the connection is closed");
        Assert.Single(broker.Household.Log.Rejects);
    }

    [Fact]
    public async Task Publish_NoValueOverMqtt311_IsCountedAndKeepsNoGoodReadingBack()
    {
        await using var broker = await BrokerUnderTest.StartAsync();
        (_, string password) = await broker.Household.AddSensorAsync("cellar");
        (IMqttClient sensor, _) = await broker.TryConnectAsync("cellar", password, version: MqttProtocolVersion.V311);

        await BrokerUnderTest.PublishAsync(sensor, $"{Cellar}/temperature", "NaN");
        await BrokerUnderTest.PublishAsync(sensor, $"{Cellar}/temperature", "17.5");

        Assert.Equal([RejectReason.NoValue], broker.Household.Log.Rejects.Select(reject => reject.Reason));
        Assert.Equal([17.5], broker.Stored.Select(reading => reading.Value));
    }

    [Fact]
    public async Task Publish_RetainedOfSensorsNobodyKnows_IsKeptForNobody()
    {
        await using var broker = await BrokerUnderTest.StartAsync();
        IMqttClient hub = await broker.ConnectAsync("hub", await broker.Household.AddGatewayAsync("hub", "#"));
        await broker.Household.AddSensorAsync("cellar");
        for (int i = 0; i < 50; i++)
            await BrokerUnderTest.PublishAsync(hub, $"fermentwatch/sensor/nobody-{i}/status", "online", retain: true);
        await BrokerUnderTest.PublishAsync(hub, $"{Cellar}/status", new string('x', 10_000), retain: true);
        await BrokerUnderTest.PublishAsync(hub, $"{Cellar}/status", "online", retain: true);

        Assert.Equal([$"{Cellar}/status online retained"], await ListenAsync(hub, "fermentwatch/sensor/#", 1));
    }
}
