using FermentWatch.Intake.Outside;
using FermentWatch.Intake.Tests.Doubles;
using FermentWatch.Intake.Tests.Peers;
using Microsoft.Extensions.Logging;

namespace FermentWatch.Intake.Tests.Outside;

/// <summary>A link to a real mosquitto.</summary>
internal sealed class LinkUnderTest : IAsyncDisposable
{
    private readonly OutsideBrokerOptions _options;
    private readonly TimeProvider _time;

    private LinkUnderTest(Household household, OutsideBrokerOptions options, TimeProvider time)
    {
        (Household, _options, _time) = (household, options, time);
        Link = Make();
    }

    public Household Household { get; }

    public OutsideLink Link { get; private set; }

    public RecordingLogger<OutsideLink> Log { get; } = new();

    public IReadOnlyList<double> Values => [.. Household.Log.Stored.Select(reading => reading.Value)];

    /// <summary>A link that knows one sensor, the cellar, and is connected.</summary>
    public static async Task<LinkUnderTest> StartAsync(Mosquitto broker, TimeProvider? time = null, Action<OutsideBrokerOptions>? set = null)
    {
        var options = new OutsideBrokerOptions { Host = "127.0.0.1", Port = broker.Port };
        set?.Invoke(options);
        var link = new LinkUnderTest(new Household(time), options, time ?? TimeProvider.System);
        await link.Household.AddSensorAsync("cellar");
        await link.StartAsync();
        return link;
    }

    /// <summary>Starts it, after <see cref="StopAsync"/> as a new service would, and waits until it is connected.</summary>
    public async Task StartAsync()
    {
        await Link.StartAsync(CancellationToken.None);
        await ConnectedAsync();
    }

    public Task ConnectedAsync() => Eventually.TrueAsync(() => Link.IsConnected, $"the link is connected ({Link.Problem})");

    public async Task StopAsync()
    {
        await Link.DisposeAsync();
        Link = Make();
    }

    public Task StoredAsync(int count) => Eventually.TrueAsync(() => Values.Count >= count, $"{count} readings are stored, not {Values.Count}");

    public async ValueTask DisposeAsync()
    {
        await Link.DisposeAsync();
        Assert.DoesNotContain(Log.Entries, entry => entry.Level >= LogLevel.Error && !Log.Expected.Contains(entry.Id));
    }

    private OutsideLink Make() => new(_options, Household.Door, Household.Sources, _time, Log);
}
