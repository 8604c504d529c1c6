using FermentWatch.Intake.Embedded;
using FermentWatch.Kitchen.Readings;
using Microsoft.Extensions.Time.Testing;
using MQTTnet;
using MQTTnet.Formatter;
using MQTTnet.Protocol;
using NodaTime;

namespace FermentWatch.Intake.Tests.Embedded;

public sealed class BrokerTests
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

    [Theory]
    [InlineData("fermentwatch/jar/12/state")]
    [InlineData("fermentwatch/round/today")]
    [InlineData("fermentwatch/service/status")]
    public async Task Publish_OurOwnTopicsOut_AreRefusedEvenToAGatewayForEverything(string topic)
    {
        await using var broker = await BrokerUnderTest.StartAsync();
        string hub = await broker.Household.AddGatewayAsync("hub", "#");
        IMqttClient gateway = await broker.ConnectAsync("hub", hub);

        MqttClientPublishResult result = await BrokerUnderTest.PublishAsync(gateway, topic, "{}");

        Assert.Equal(MqttClientPublishReasonCode.NotAuthorized, result.ReasonCode);
    }

    [Fact]
    public async Task PublishAsync_OurOwnMessage_SaysWhetherAnybodyListens()
    {
        await using var broker = await BrokerUnderTest.StartAsync();
        IMqttClient tablet = await broker.ConnectAsync("tablet", await broker.Household.AddGatewayAsync("tablet", "kitchen/#"));
        Task<bool> PublishAsync(string topic) => broker.Broker.PublishAsync(topic, "{}"u8.ToArray(), retain: false, CancellationToken.None);
        Assert.False(await PublishAsync("kitchen/notices"));

        await tablet.SubscribeAsync("kitchen/notices");
        Assert.True(await PublishAsync("kitchen/notices"));
        Assert.False(await PublishAsync("kitchen/others"));

        await tablet.DisconnectAsync();
        await Eventually.TrueAsync(() => broker.Broker.ConnectedClients == 0, "the tablet has left");
        Assert.False(await PublishAsync("kitchen/notices"));
    }

    /// <summary>A start that fails on a taken port stops the broker while a loop is in its pass: that is no failure of the loop.</summary>
    [Fact]
    public async Task PublishAsync_OnceTheBrokerHasStopped_IsGotByNobodyAndNoError()
    {
        await using var broker = await BrokerUnderTest.StartAsync();
        await broker.Broker.StopAsync(CancellationToken.None);
        Assert.False(await broker.Broker.PublishAsync("fermentwatch/status", new byte[] { 1 }, retain: true, CancellationToken.None));
    }

    [Fact]
    public async Task PublishAsync_ListenerAtQos1_WaitsForItsAcknowledgement()
    {
        await using var broker = await BrokerUnderTest.StartAsync();
        IMqttClient tablet = await broker.ConnectAsync("tablet", await broker.Household.AddGatewayAsync("tablet", "kitchen/#"));
        var acknowledge = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        var heard = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        tablet.ApplicationMessageReceivedAsync += _ =>
        {
            heard.TrySetResult();
            return acknowledge.Task;
        };
        await tablet.SubscribeAsync("kitchen/notices", MqttQualityOfServiceLevel.AtLeastOnce);

        Task<bool> got = broker.Broker.PublishAsync("kitchen/notices", "{}"u8.ToArray(), retain: false, CancellationToken.None);
        await heard.Task;
        Assert.False(got.IsCompleted);
        acknowledge.SetResult();

        Assert.True(await got);
    }

    [Fact]
    public async Task PublishAsync_ListenerNeverAcknowledges_IsGivenUp()
    {
        await using var broker = await BrokerUnderTest.StartAsync(answerPatience: TimeSpan.FromSeconds(0.2));
        IMqttClient tablet = await broker.ConnectAsync("tablet", await broker.Household.AddGatewayAsync("tablet", "kitchen/#"));
        tablet.ApplicationMessageReceivedAsync += received =>
        {
            received.AutoAcknowledge = false;
            return Task.CompletedTask;
        };
        await tablet.SubscribeAsync("kitchen/notices", MqttQualityOfServiceLevel.AtLeastOnce);

        Assert.False(await broker.Broker.PublishAsync("kitchen/notices", "{}"u8.ToArray(), retain: false, CancellationToken.None));
        Assert.True(await broker.Broker.PublishAsync("kitchen/notices", "{}"u8.ToArray(), retain: true, CancellationToken.None));
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

    [Fact]
    public async Task PublishAsync_OurOwnRetained_ReachesAGatewayThatListensLater()
    {
        await using var broker = await BrokerUnderTest.StartAsync();
        await broker.Broker.PublishAsync("fermentwatch/jar/12/state", "{}"u8.ToArray(), retain: true, CancellationToken.None);
        string hub = await broker.Household.AddGatewayAsync("hub", "gateway/#");

        List<string> heard = await ListenAsync(await broker.ConnectAsync("hub", hub), "fermentwatch/jar/+/state", 1);

        Assert.Equal(["fermentwatch/jar/12/state {} retained"], heard);
        Assert.Equal(0, broker.Household.Door.Counts.Messages);
    }

    [Theory]
    [InlineData(MqttProtocolVersion.V311)]
    [InlineData(MqttProtocolVersion.V500)]
    public async Task Connect_WrongPassword_IsRefusedCountedAndSaidOnce(MqttProtocolVersion version)
    {
        await using var broker = await BrokerUnderTest.StartAsync();
        await broker.Household.AddSensorAsync("cellar");

        for (int i = 0; i < 3; i++)
            Assert.Equal(
                MqttClientConnectResultCode.BadUserNameOrPassword,
                (await broker.TryConnectAsync("cellar", "guess", version: version)).Result.ResultCode);
        Assert.Equal(
            MqttClientConnectResultCode.BadUserNameOrPassword,
            (await broker.TryConnectAsync("nobody", "guess", version: version)).Result.ResultCode);

        Assert.Equal(4, broker.Broker.Counts.Refused(RefusalReason.BadCredentials));
        Assert.Equal(2, broker.Log.Entries.Count(entry => entry.Id == 2003));
        Assert.Equal(0, broker.Broker.ConnectedClients);
    }

    [Fact]
    public async Task Connect_NoClientId_IsGivenOneInMqtt5AndRefusedIn311()
    {
        await using var broker = await BrokerUnderTest.StartAsync();
        (_, string password) = await broker.Household.AddSensorAsync("cellar");

        var five = await broker.TryConnectAsync("cellar", password, "", MqttProtocolVersion.V500);
        var three = await broker.TryConnectAsync("cellar", password, "", MqttProtocolVersion.V311);

        Assert.StartsWith("auto-", five.Result.AssignedClientIdentifier);
        Assert.Equal(MqttClientConnectResultCode.ClientIdentifierNotValid, three.Result.ResultCode);
    }

    [Fact]
    public async Task Connect_ClientIdOfAnotherUser_IsAClientOfItsOwnAndTakesNothingOver()
    {
        await using var broker = await BrokerUnderTest.StartAsync();
        (_, string password) = await broker.Household.AddSensorAsync("crock-7");
        IMqttClient sensor = await broker.ConnectSensorAsync("cellar");

        var thief = await broker.TryConnectAsync("crock-7", password, clientId: "cellar");

        Assert.Equal(MqttClientConnectResultCode.Success, thief.Result.ResultCode);
        Assert.Equal(2, broker.Broker.ConnectedClients);
        Assert.True((await BrokerUnderTest.PublishAsync(sensor, $"{Cellar}/temperature", "17.5")).IsSuccess);
        Assert.False((await BrokerUnderTest.PublishAsync(thief.Client, $"{Cellar}/temperature", "17.5")).IsSuccess);
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

    [Fact]
    public async Task Log_NamesOfStrangers_AreOneLineWithoutEscapesAndShort()
    {
        await using var broker = await BrokerUnderTest.StartAsync();
        string name = "x\n2026-10-04 [ERR] made up \u001b[31mred\u202e" + new string('y', 4_000);
        await broker.TryConnectAsync(name, "guess", clientId: name);
        IMqttClient sensor = await broker.ConnectSensorAsync("cellar");
        await BrokerUnderTest.PublishAsync(sensor, "other/\u2028\u001b[2J" + new string('z', 4_000), "1");

        string[] lines = [.. broker.Log.Entries.Where(entry => entry.Id is 2003 or 2004).Select(entry => entry.Text)];
        Assert.Equal(2, lines.Length);
        Assert.All(lines, line => Assert.DoesNotContain(line, letter => char.IsControl(letter) || letter is '\u202e' or '\u2028'));
        Assert.All(lines, line => Assert.InRange(line.Length, 1, 400));
    }

    [Fact]
    public async Task Connect_SameDeviceComeBack_TakesItsPlaceOver()
    {
        await using var broker = await BrokerUnderTest.StartAsync(set: options => options.MaxConnections = 1);
        (_, string password) = await broker.Household.AddSensorAsync("cellar");
        await broker.ConnectAsync("cellar", password);

        IMqttClient again = await broker.ConnectAsync("cellar", password);

        Assert.True((await BrokerUnderTest.PublishAsync(again, $"{Cellar}/temperature", "17.5")).IsSuccess);
        Assert.Equal(1, broker.Broker.ConnectedClients);
    }

    [Fact]
    public async Task Connect_MoreThanAllowed_IsRefusedUntilOneLeaves()
    {
        await using var broker = await BrokerUnderTest.StartAsync(set: options => options.MaxConnections = 1);
        (_, string password) = await broker.Household.AddSensorAsync("crock-7");
        IMqttClient first = await broker.ConnectSensorAsync("cellar");

        Assert.Equal(MqttClientConnectResultCode.ServerUnavailable, (await broker.TryConnectAsync("crock-7", password)).Result.ResultCode);
        await first.DisconnectAsync();
        await Eventually.TrueAsync(() => broker.Broker.ConnectedClients == 0, "the first client's place is free");
        await broker.ConnectAsync("crock-7", password);

        Assert.Equal(1, broker.Broker.Counts.Refused(RefusalReason.TooManyConnections));
    }

    [Fact]
    public async Task CredentialCheck_SensorRemoved_IsCutWithinAMinuteAndNotLetInAgain()
    {
        var time = new FakeTimeProvider(new DateTimeOffset(2026, 10, 4, 8, 0, 0, TimeSpan.Zero));
        await using var broker = await BrokerUnderTest.StartAsync(time);
        (var removed, string password) = await broker.Household.AddSensorAsync("cellar");
        IMqttClient sensor = await broker.ConnectAsync("cellar", password);
        IMqttClient stays = await broker.ConnectSensorAsync("crock-7");
        var cut = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        sensor.DisconnectedAsync += _ =>
        {
            cut.TrySetResult();
            return Task.CompletedTask;
        };
        await broker.Household.Book.RemoveAsync(removed.Id, Doubles.Household.Added, CancellationToken.None);

        time.Advance(TimeSpan.FromSeconds(20));
        await cut.Task.WaitAsync(TimeSpan.FromMinutes(3));

        Assert.Equal(MqttClientConnectResultCode.BadUserNameOrPassword, (await broker.TryConnectAsync("cellar", password)).Result.ResultCode);
        Assert.True((await BrokerUnderTest.PublishAsync(stays, "fermentwatch/sensor/crock-7/ph", "3.5")).IsSuccess);
        Assert.Equal(1, broker.Broker.Counts.Refused(RefusalReason.CredentialWithdrawn));
    }

    [Fact]
    public async Task StartAsync_StoppedBefore_RunsAgain()
    {
        await using var broker = await BrokerUnderTest.StartAsync();
        await broker.Broker.StopAsync(CancellationToken.None);
        await broker.Broker.StartAsync(CancellationToken.None);

        IMqttClient sensor = await broker.ConnectSensorAsync("cellar");

        Assert.True((await BrokerUnderTest.PublishAsync(sensor, $"{Cellar}/temperature", "17.5")).IsSuccess);
    }

    private static async Task<List<string>> ListenAsync(IMqttClient client, string filter, int count)
    {
        var heard = new List<string>();
        var enough = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        client.ApplicationMessageReceivedAsync += received =>
        {
            MqttApplicationMessage message = received.ApplicationMessage;
            heard.Add($"{message.Topic} {message.ConvertPayloadToString()}{(message.Retain ? " retained" : "")}");
            if (heard.Count >= count)
                enough.TrySetResult();
            return Task.CompletedTask;
        };
        await client.SubscribeAsync(filter, MqttQualityOfServiceLevel.AtLeastOnce);
        await enough.Task.WaitAsync(TimeSpan.FromMinutes(3));
        return heard;
    }
}
