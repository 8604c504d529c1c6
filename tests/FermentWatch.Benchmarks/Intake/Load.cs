using System.Globalization;
using System.Text;
using MQTTnet;
using MQTTnet.Protocol;

namespace FermentWatch.Benchmarks.Intake;

/// <summary>Bare numbers at QoS 1 from eight clients, each with a hundred under way.</summary>
internal static class Load
{
    public const int Clients = 8;

    private const int Window = 100;

    /// <summary>Publishes as fast as it is acknowledged.</summary>
    /// <param name="port">The broker's port on loopback.</param>
    /// <param name="password">The clients' password.</param>
    /// <param name="messages">How many, over all clients.</param>
    public static async Task<LoadResult> RunAsync(int port, string password, int messages)
    {
        IMqttClient[] clients =
            await Task.WhenAll(Enumerable.Range(0, Clients).Select(index => ConnectAsync(port, ManySensors.Slug(index), password)));
        long start = TimeProvider.System.GetTimestamp();
        TimeSpan[] slowest = await Task.WhenAll(clients.Select((client, index) =>
            Task.Run(() => PublishAsync(client, ManySensors.Slug(index), messages / Clients))));
        TimeSpan took = TimeProvider.System.GetElapsedTime(start);
        foreach (IMqttClient client in clients)
            client.Dispose();
        return new LoadResult(messages / Clients * Clients / took.TotalSeconds, slowest.Max());
    }

    private static async Task<IMqttClient> ConnectAsync(int port, string user, string password)
    {
        IMqttClient client = new MqttClientFactory().CreateMqttClient();
        MqttClientConnectResult result = await client.ConnectAsync(new MqttClientOptionsBuilder()
            .WithTcpServer("127.0.0.1", port).WithClientId(user).WithCredentials(user, password).Build());
        return result.ResultCode == MqttClientConnectResultCode.Success
            ? client
            : throw new InvalidOperationException($"The broker answered {result.ResultCode}.");
    }

    /// <summary>The slowest acknowledgement.</summary>
    private static async Task<TimeSpan> PublishAsync(IMqttClient client, string slug, int count)
    {
        string topic = $"fermentwatch/sensor/{slug}/millivolts";
        using var window = new SemaphoreSlim(Window);
        var underWay = new Queue<Task<TimeSpan>>();
        TimeSpan slowest = TimeSpan.Zero;
        for (int i = 0; i < count; i++)
        {
            await window.WaitAsync();
            underWay.Enqueue(PublishOneAsync(client, topic, i, window));
            while (underWay.TryPeek(out Task<TimeSpan>? oldest) && oldest.IsCompleted)
                slowest = Longer(slowest, await underWay.Dequeue());
        }
        while (underWay.TryDequeue(out Task<TimeSpan>? last))
            slowest = Longer(slowest, await last);
        return slowest;
    }

    private static async Task<TimeSpan> PublishOneAsync(IMqttClient client, string topic, int number, SemaphoreSlim window)
    {
        long start = TimeProvider.System.GetTimestamp();
        MqttClientPublishResult result = await client.PublishAsync(new MqttApplicationMessageBuilder()
            .WithTopic(topic)
            .WithPayload(Encoding.ASCII.GetBytes(number.ToString(CultureInfo.InvariantCulture)))
            .WithQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce)
            .Build());
        window.Release();
        return result.IsSuccess
            ? TimeProvider.System.GetElapsedTime(start)
            : throw new InvalidOperationException($"The broker answered {result.ReasonCode}.");
    }

    private static TimeSpan Longer(TimeSpan one, TimeSpan other) => one > other ? one : other;
}
