using System.Text;
using FermentWatch.Intake.Embedded;
using FermentWatch.Intake.Tests.Doubles;
using FermentWatch.Kitchen.Readings;
using Microsoft.Extensions.Logging;
using MQTTnet;
using MQTTnet.Formatter;
using MQTTnet.Protocol;

namespace FermentWatch.Intake.Tests.Embedded;

/// <summary>A running broker on loopback with real clients.</summary>
internal sealed class BrokerUnderTest : IAsyncDisposable
{
    private readonly List<IMqttClient> _clients = [];

    private BrokerUnderTest(Household household, BrokerOptions options, TimeProvider time, TimeSpan answerPatience)
    {
        Household = household;
        Broker = new Broker(options, household.Book, household.Door, time, Log) { AnswerPatience = answerPatience };
    }

    public Household Household { get; }

    public Broker Broker { get; }

    public RecordingLogger<Broker> Log { get; } = new();

    public IReadOnlyList<Reading> Stored => Household.Log.Stored;

    public static async Task<BrokerUnderTest> StartAsync(TimeProvider? time = null, Action<BrokerOptions>? set = null,
        TimeSpan? answerPatience = null)
    {
        var options = new BrokerOptions { Port = 0 };
        set?.Invoke(options);
        var broker = new BrokerUnderTest(new Household(time), options, time ?? TimeProvider.System, answerPatience ?? TimeSpan.FromSeconds(10));
        await broker.Broker.StartAsync(CancellationToken.None);
        return broker;
    }

    /// <summary>Connects; the result says whether it was let in.</summary>
    public async Task<(IMqttClient Client, MqttClientConnectResult Result)> TryConnectAsync(
        string user, string password, string? clientId = null, MqttProtocolVersion version = MqttProtocolVersion.V500)
    {
        IMqttClient client = new MqttClientFactory().CreateMqttClient();
        _clients.Add(client);
        MqttClientConnectResult result = await client.ConnectAsync(new MqttClientOptionsBuilder()
            .WithTcpServer("127.0.0.1", Broker.Port ?? throw new InvalidOperationException("It does not listen."))
            .WithProtocolVersion(version)
            .WithClientId(clientId ?? user)
            .WithCredentials(user, password)
            .WithTimeout(TimeSpan.FromSeconds(10))
            .Build());
        return (client, result);
    }

    public async Task<IMqttClient> ConnectAsync(string user, string password, string? clientId = null)
    {
        (IMqttClient client, MqttClientConnectResult result) = await TryConnectAsync(user, password, clientId);
        Assert.Equal(MqttClientConnectResultCode.Success, result.ResultCode);
        return client;
    }

    /// <summary>A sensor that is known and connected.</summary>
    public async Task<IMqttClient> ConnectSensorAsync(string slug)
    {
        (_, string password) = await Household.AddSensorAsync(slug);
        return await ConnectAsync(slug, password);
    }

    public static Task<MqttClientPublishResult> PublishAsync(IMqttClient client, string topic, string payload, bool retain = false) =>
        client.PublishAsync(new MqttApplicationMessageBuilder()
            .WithTopic(topic)
            .WithPayload(Encoding.UTF8.GetBytes(payload))
            .WithQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce)
            .WithRetainFlag(retain)
            .Build());

    public async ValueTask DisposeAsync()
    {
        foreach (IMqttClient client in _clients)
            client.Dispose();
        await Broker.DisposeAsync();
        Assert.DoesNotContain(Log.Entries, entry => entry.Level >= LogLevel.Error && !Log.Expected.Contains(entry.Id));
    }
}
