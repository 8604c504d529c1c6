using System.Collections.Concurrent;
using System.Text;
using MQTTnet;
using MQTTnet.Protocol;

namespace FermentWatch.Service.Tests.Doors;

/// <summary>A client at a broker: publishes at QoS 1, and hears everything.</summary>
internal sealed class Listener : IAsyncDisposable
{
    private readonly IMqttClient _client = new MqttClientFactory().CreateMqttClient();

    /// <summary>What was heard last on each topic; an empty payload is there as "".</summary>
    public ConcurrentDictionary<string, string> Heard { get; } = new();

    public static async Task<Listener> AtAsync(int port, string? user = null, string? password = null)
    {
        var listener = new Listener();
        listener._client.ApplicationMessageReceivedAsync += received =>
        {
            listener.Heard[received.ApplicationMessage.Topic] = Encoding.UTF8.GetString(received.ApplicationMessage.Payload);
            return Task.CompletedTask;
        };
        MqttClientOptionsBuilder options = new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", port)
            .WithClientId($"listener-{Guid.NewGuid():N}");
        if (user is not null)
            options = options.WithCredentials(user, password);
        Assert.Equal(MqttClientConnectResultCode.Success, (await listener._client.ConnectAsync(options.Build())).ResultCode);
        await listener._client.SubscribeAsync("#");
        return listener;
    }

    public async Task SayAsync(string topic, string payload)
    {
        MqttClientPublishResult result = await _client.PublishStringAsync(topic, payload, MqttQualityOfServiceLevel.AtLeastOnce);
        Assert.True(result.IsSuccess, result.ReasonString);
    }

    public async ValueTask DisposeAsync()
    {
        await _client.DisconnectAsync();
        _client.Dispose();
    }
}
