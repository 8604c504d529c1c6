using FermentWatch.Intake.Embedded;
using Microsoft.Extensions.Time.Testing;
using MQTTnet;
using MQTTnet.Formatter;

namespace FermentWatch.Intake.Tests.Embedded;

public sealed partial class BrokerTests
{
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
}
