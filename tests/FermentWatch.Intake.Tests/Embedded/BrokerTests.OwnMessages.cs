using MQTTnet;
using MQTTnet.Protocol;

namespace FermentWatch.Intake.Tests.Embedded;

public sealed partial class BrokerTests
{
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
    public async Task PublishAsync_OurOwnRetained_ReachesAGatewayThatListensLater()
    {
        await using var broker = await BrokerUnderTest.StartAsync();
        await broker.Broker.PublishAsync("fermentwatch/jar/12/state", "{}"u8.ToArray(), retain: true, CancellationToken.None);
        string hub = await broker.Household.AddGatewayAsync("hub", "gateway/#");

        List<string> heard = await ListenAsync(await broker.ConnectAsync("hub", hub), "fermentwatch/jar/+/state", 1);

        Assert.Equal(["fermentwatch/jar/12/state {} retained"], heard);
        Assert.Equal(0, broker.Household.Door.Counts.Messages);
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
