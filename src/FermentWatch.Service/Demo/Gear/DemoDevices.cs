using FermentWatch.Service.Demo.Household;
using NodaTime;

namespace FermentWatch.Service.Demo.Gear;

/// <summary>All sensors of the demo: first their history, then live.</summary>
internal sealed class DemoDevices(IReadOnlyList<MadeSensor> sensors, string host, int port, TimeProvider clock) : IAsyncDisposable
{
    private readonly List<SensorDevice> _devices = [.. sensors.Select(sensor => new SensorDevice(sensor, host, port, clock))];

    /// <summary>Sends all history, and from the troubled sensor a few payloads that cannot be used. Returns how many packs.</summary>
    public async Task<int> SendHistoryAsync(Instant until, CancellationToken cancellationToken)
    {
        int[] packs = await Task.WhenAll(_devices.Select(device => device.SendHistoryAsync(until, cancellationToken)));
        SensorDevice troubled = _devices[sensors.ToList().FindIndex(sensor => sensor.Invented.Slug == NumberNine.TroubledSensor)];
        foreach ((string quantity, string payload) in NumberNine.UnusablePayloads)
            await troubled.SendAsync(quantity, payload, cancellationToken);
        return packs.Sum();
    }

    /// <summary>Reports until told to stop.</summary>
    public Task ReportAsync(CancellationToken cancellationToken) => Task.WhenAll(_devices.Select(device => device.ReportAsync(cancellationToken)));

    public async ValueTask DisposeAsync()
    {
        foreach (SensorDevice device in _devices)
            await device.DisposeAsync();
    }
}
