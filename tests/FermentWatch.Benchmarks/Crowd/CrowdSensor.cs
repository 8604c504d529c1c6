using System.Collections.Concurrent;
using System.Globalization;
using System.Text;
using FermentWatch.Kitchen.Sensors;
using MQTTnet;
using MQTTnet.Protocol;
using NodaTime;

namespace FermentWatch.Benchmarks.Crowd;

/// <summary>One connection of a sensor, with the times of what was acknowledged.</summary>
internal sealed class CrowdSensor(int port, (Sensor Sensor, string Password) who)
{
    private const int FloodWindow = 100;
    private const int PackSize = 300;

    public int Key => who.Sensor.Key;

    /// <summary>Times of acknowledged readings, in milliseconds since the Unix epoch.</summary>
    public ConcurrentBag<long> Acknowledged { get; } = [];

    /// <summary>From each sending to its acknowledgement.</summary>
    public ConcurrentBag<double> Milliseconds { get; } = [];

    public bool WasLetIn { get; private set; }

    /// <summary>Sends so many readings a second, each when it is due, whether or not the last was acknowledged.</summary>
    public async Task AtPaceAsync(int perSecond, CancellationToken ends)
    {
        using IMqttClient client = await ConnectAsync(who.Sensor.Slug);
        var underWay = new List<Task>();
        long start = TimeProvider.System.GetTimestamp(), begun = TimeProvider.System.GetUtcNow().ToUnixTimeMilliseconds();
        for (int sent = 0; !ends.IsCancellationRequested;)
        {
            for (; sent < TimeProvider.System.GetElapsedTime(start).TotalSeconds * perSecond; sent++)
                underWay.Add(SendAsync(client, [begun + (sent * 1000L / perSecond)], 19 + (sent % 10 * 0.1)));
            await Task.Delay(TimeSpan.FromMilliseconds(5), TimeProvider.System, CancellationToken.None);
        }
        await Task.WhenAll(underWay);
    }

    /// <summary>Sends one reading a minute.</summary>
    public async Task EachMinuteAsync(CancellationToken ends)
    {
        using IMqttClient client = await ConnectAsync(who.Sensor.Slug);
        for (int sent = 0; !ends.IsCancellationRequested; sent++)
        {
            await SendAsync(client, [TimeProvider.System.GetUtcNow().ToUnixTimeMilliseconds()], 19 + (sent % 10 * 0.1));
            await Task.Delay(TimeSpan.FromMinutes(1), TimeProvider.System, ends).ContinueWith(_ => { }, TaskScheduler.Default);
        }
    }

    /// <summary>Sends as fast as it is acknowledged, and tries again to be let in.</summary>
    public async Task FloodAsync(string clientId, CancellationToken ends)
    {
        while (!ends.IsCancellationRequested)
        {
            try
            {
                using IMqttClient client = await ConnectAsync(clientId);
                WasLetIn = true;
                await Task.WhenAll(Enumerable.Range(0, FloodWindow).Select(async _ =>
                {
                    while (!ends.IsCancellationRequested)
                        await SendAsync(client, [TimeProvider.System.GetUtcNow().ToUnixTimeMilliseconds()], 20);
                }).Select(sending => sending.WaitAsync(ends)));
            }
            catch (Exception) when (!ends.IsCancellationRequested)
            {
                await Task.Delay(TimeSpan.FromMilliseconds(500), TimeProvider.System, CancellationToken.None);
            }
            catch (Exception)
            {
                return;
            }
        }
    }

    /// <summary>Sends a month of minutes in packs, one after the other.</summary>
    public async Task MonthAsync(Instant now, CancellationToken ends)
    {
        using IMqttClient client = await ConnectAsync(who.Sensor.Slug);
        long minute = now.ToUnixTimeMilliseconds() / 60_000;
        foreach (long[] pack in Enumerable.Range(1, 31 * 1440).Select(back => (minute - back) * 60_000).Chunk(PackSize))
        {
            if (ends.IsCancellationRequested)
                return;
            await SendAsync(client, pack, 18.5);
        }
    }

    private async Task SendAsync(IMqttClient client, long[] times, double celsius)
    {
        string pack = string.Join(',', times.Select((at, index) => string.Create(CultureInfo.InvariantCulture,
            $$"""{"n":"temperature","u":"Cel","t":{{at / 1000.0:F3}},"v":{{celsius + (index % 7 * 0.1):F2}}}""")));
        long start = TimeProvider.System.GetTimestamp();
        MqttClientPublishResult result = await client.PublishAsync(new MqttApplicationMessageBuilder()
            .WithTopic($"fermentwatch/sensor/{who.Sensor.Slug}").WithPayload(Encoding.UTF8.GetBytes($"[{pack}]"))
            .WithQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce).Build());
        if (!result.IsSuccess)
            return;
        Milliseconds.Add(TimeProvider.System.GetElapsedTime(start).TotalMilliseconds);
        foreach (long at in times)
            Acknowledged.Add(at);
    }

    private async Task<IMqttClient> ConnectAsync(string clientId)
    {
        IMqttClient client = new MqttClientFactory().CreateMqttClient();
        MqttClientConnectResult result = await client.ConnectAsync(new MqttClientOptionsBuilder()
            .WithTcpServer("127.0.0.1", port).WithClientId(clientId).WithCredentials(who.Sensor.Slug, who.Password)
            .WithKeepAlivePeriod(TimeSpan.FromMinutes(2)).WithTimeout(TimeSpan.FromMinutes(1)).Build());
        if (result.ResultCode == MqttClientConnectResultCode.Success)
            return client;
        client.Dispose();
        throw new InvalidOperationException($"The broker answered {result.ResultCode}.");
    }
}
