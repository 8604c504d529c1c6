using FermentWatch.Intake.Door;
using FermentWatch.Intake.Embedded;
using FermentWatch.Intake.Outside;
using FermentWatch.Intake.Tests.Peers;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Storage.Readings;
using Microsoft.Extensions.Logging.Abstractions;
using MQTTnet;
using MQTTnet.Protocol;
using MQTTnet.Server;

namespace FermentWatch.Benchmarks.Intake;

/// <summary>
/// Durable readings a second at QoS 1 as a share of what the same broker does with an empty handler in the same run. Each figure
/// is the best of three rounds that alternate, because the machine may be shared.
/// </summary>
internal static class IntakeBenchmark
{
    private const int Messages = 40_000;
    private const int Rounds = 3;

    public static async Task RunAsync()
    {
        var book = new ManySensors();
        string folder = Directory.CreateTempSubdirectory("fermentwatch-bench-").FullName;
        // Saving at every change, which a household wants against power cuts, would be all that is measured.
        await using Mosquitto mosquitto = await Mosquitto.StartAsync("allow_anonymous true", "persistence false");
        try
        {
            await CompareAsync("embedded broker", "one commit a message",
                () => EmptyAsync(Messages), () => DurableAsync(folder, book, OneByOneLog, Messages / 8), () =>
                    DurableAsync(folder, book, log => log, Messages));
            await CompareAsync("mosquitto", null,
                () => OutsideEmptyAsync(mosquitto.Port), null, () => OutsideDurableAsync(folder, book, mosquitto.Port));
        }
        finally
        {
            Directory.Delete(folder, true);
        }
    }

    private static OneByOne OneByOneLog(IReadingIntake log) => new(log);

    private static async Task CompareAsync(
        string broker, string? slowName, Func<Task<LoadResult>> empty, Func<Task<LoadResult>>? slow, Func<Task<LoadResult>> durable)
    {
        var best = new Dictionary<string, LoadResult>();
        for (int round = 0; round < Rounds; round++)
        {
            Keep(best, "empty handler", await empty());
            if (slow is not null)
                Keep(best, slowName!, await slow());
            Keep(best, "durable", await durable());
        }
        foreach ((string what, LoadResult result) in best)
            Console.WriteLine(
                $"{broker}, {what}: {result.PerSecond:F0}/s, {result.PerSecond / best["empty handler"].PerSecond:F2} of the empty handler, "
                + $"slowest acknowledgement {result.Slowest.TotalMilliseconds:F0} ms");
        if (slowName is not null)
            Console.WriteLine($"{broker}: durable is {best["durable"].PerSecond / best[slowName].PerSecond:F1} times {slowName}");
    }

    private static void Keep(Dictionary<string, LoadResult> best, string what, LoadResult result)
    {
        if (!best.TryGetValue(what, out LoadResult? before) || result.PerSecond > before.PerSecond)
            best[what] = result;
    }

    private static async Task<LoadResult> EmptyAsync(int messages)
    {
        MqttServerOptions options = new MqttServerOptionsBuilder()
            .WithDefaultEndpoint().WithDefaultEndpointPort(0).WithDefaultEndpointBoundIPV6Address(System.Net.IPAddress.None).Build();
        using MqttServer server = new MqttServerFactory().CreateMqttServer(options);
        server.InterceptingPublishAsync += _ => Task.CompletedTask;
        await server.StartAsync();
        LoadResult result = await Load.RunAsync(options.DefaultEndpointOptions.Port, "any", messages);
        await server.StopAsync(new MqttServerStopOptions());
        return result;
    }

    private static async Task<LoadResult> DurableAsync(
        string folder, ManySensors book, Func<IReadingIntake, IReadingIntake> through, int messages)
    {
        await using ReadingStore store = ReadingStore.Open(Path.Combine(folder, $"{Guid.NewGuid()}.db"));
        var door = new MessageDoor(through(store), new SensorDirectory(book, TimeProvider.System));
        await using var broker = new Broker(
            new BrokerOptions { Port = 0, MaxMessagesPerSecond = 0 }, book, door, TimeProvider.System, NullLogger<Broker>.Instance);
        await broker.StartAsync(CancellationToken.None);
        LoadResult result = await Load.RunAsync(broker.Port!.Value, book.Password, messages);
        return door.Counts.Stored == messages ? result : throw new InvalidOperationException($"{door.Counts.Stored} of {messages} were stored.");
    }

    private static async Task<LoadResult> OutsideEmptyAsync(int port)
    {
        int received = 0;
        using IMqttClient client = new MqttClientFactory().CreateMqttClient();
        client.ApplicationMessageReceivedAsync += _ =>
        {
            Interlocked.Increment(ref received);
            return Task.CompletedTask;
        };
        await client.ConnectAsync(new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", port).WithReceiveMaximum(1_000).Build());
        await client.SubscribeAsync("fermentwatch/sensor/#", MqttQualityOfServiceLevel.AtLeastOnce);
        return await ThroughAsync(port, () => Volatile.Read(ref received));
    }

    private static async Task<LoadResult> OutsideDurableAsync(string folder, ManySensors book, int port)
    {
        await using ReadingStore store = ReadingStore.Open(Path.Combine(folder, $"{Guid.NewGuid()}.db"));
        var door = new MessageDoor(store, new SensorDirectory(book, TimeProvider.System));
        var options = new OutsideBrokerOptions { Host = "127.0.0.1", Port = port, ClientId = $"bench-{Guid.NewGuid():N}",
            SessionExpiry = TimeSpan.FromMinutes(1) };
        await using var link = new OutsideLink(options, door, null, TimeProvider.System, NullLogger<OutsideLink>.Instance);
        await link.StartAsync(CancellationToken.None);
        while (!link.IsConnected)
            await Task.Delay(TimeSpan.FromMilliseconds(10), TimeProvider.System);
        return await ThroughAsync(port, () => (int)door.Counts.Stored);
    }

    /// <summary>The rate at which messages arrive on the other side of a broker.</summary>
    private static async Task<LoadResult> ThroughAsync(int port, Func<int> arrived)
    {
        long start = TimeProvider.System.GetTimestamp();
        LoadResult load = await Load.RunAsync(port, "any", Messages);
        while (arrived() < Messages)
            await Task.Delay(TimeSpan.FromMilliseconds(1), TimeProvider.System);
        return new LoadResult(Messages / TimeProvider.System.GetElapsedTime(start).TotalSeconds, load.Slowest);
    }
}
