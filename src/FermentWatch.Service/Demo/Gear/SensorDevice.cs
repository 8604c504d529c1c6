using System.Globalization;
using System.Text;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Topics;
using FermentWatch.Service.Demo.Household;
using MQTTnet;
using MQTTnet.Exceptions;
using MQTTnet.Protocol;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Service.Demo.Gear;

/// <summary>A sensor of the demo as a client of the broker: it comes in by the same door, with its own credential, as a real one.</summary>
internal sealed class SensorDevice(MadeSensor sensor, string host, int port, TimeProvider clock) : IAsyncDisposable
{
    private readonly IMqttClient _client = new MqttClientFactory().CreateMqttClient();

    private string Topic => OwnTopics.Sensors + sensor.Invented.Slug;

    /// <summary>Sends what was measured while nobody listened. Returns how many packs that were.</summary>
    /// <exception cref="InvalidOperationException">The broker refused the sensor or a pack.</exception>
    public async Task<int> SendHistoryAsync(Instant until, CancellationToken cancellationToken)
    {
        await ConnectAsync(cancellationToken);
        int packs = 0;
        foreach (byte[] pack in SenMlPacks.Of(sensor, sensor.Since, until))
        {
            await PublishAsync(Topic, pack, retain: false, cancellationToken);
            packs++;
        }
        return packs;
    }

    /// <summary>Sends one payload as it is, right or wrong.</summary>
    public Task SendAsync(string quantity, string payload, CancellationToken cancellationToken) =>
        PublishAsync($"{Topic}/{quantity}", Encoding.UTF8.GetBytes(payload), retain: false, cancellationToken);

    /// <summary>Reports at its own pace until it is told to stop.</summary>
    public async Task ReportAsync(CancellationToken cancellationToken)
    {
        using var timer = new PeriodicTimer(sensor.Invented.Period, clock);
        try
        {
            do
                await TryReportAsync(cancellationToken);
            while (await timer.WaitForNextTickAsync(cancellationToken));
        }
        catch (OperationCanceledException) when (cancellationToken.IsCancellationRequested)
        {
            // The demo ends.
        }
    }

    public async ValueTask DisposeAsync()
    {
        if (_client.IsConnected)
            await _client.DisconnectAsync(new MqttClientDisconnectOptions());
        _client.Dispose();
    }

    private async Task TryReportAsync(CancellationToken cancellationToken)
    {
        try
        {
            if (!_client.IsConnected)
                await ConnectAsync(cancellationToken);
            await ReportOnceAsync(cancellationToken);
        }
        catch (MqttCommunicationException)
        {
            // Lost: it is tried again at the next tick. The library says so too where a wait was cancelled.
            cancellationToken.ThrowIfCancellationRequested();
        }
    }

    private async Task ReportOnceAsync(CancellationToken cancellationToken)
    {
        Instant now = clock.GetUtcNow().ToInstant();
        await SendAsync(MeasuredQuantity.Of(Quantity.Temperature).Name, Number(sensor.CelsiusAt(now)), cancellationToken);
        if (sensor.PhAt is { } phAt)
            await SendAsync(MeasuredQuantity.Of(Quantity.Ph).Name, Number(Math.Round(phAt(now), 2)), cancellationToken);
    }

    private async Task ConnectAsync(CancellationToken cancellationToken)
    {
        MqttClientOptions options = new MqttClientOptionsBuilder()
            .WithTcpServer(host, port)
            .WithClientId(sensor.Invented.Slug)
            .WithCredentials(sensor.Invented.Slug, sensor.Password)
            .WithWillTopic($"{Topic}/status").WithWillPayload("offline").WithWillRetain()
            .Build();
        MqttClientConnectResult result = await _client.ConnectAsync(options, cancellationToken);
        if (result.ResultCode != MqttClientConnectResultCode.Success)
            throw new InvalidOperationException($"The broker refused the demo's sensor {sensor.Invented.Slug}: {result.ResultCode}.");
        await PublishAsync($"{Topic}/status", "online"u8.ToArray(), retain: true, cancellationToken);
    }

    private async Task PublishAsync(string topic, byte[] payload, bool retain, CancellationToken cancellationToken)
    {
        MqttApplicationMessage message = new MqttApplicationMessageBuilder()
            .WithTopic(topic).WithPayload(payload).WithRetainFlag(retain)
            .WithQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce)
            .Build();
        await _client.PublishAsync(message, cancellationToken);
    }

    private static string Number(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);
}
