using FermentWatch.Export.Tests.Doubles;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Forwarding;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.TestKit;
using NodaTime;
using TasteVerdict = FermentWatch.Kitchen.Observations.TasteVerdict;

namespace FermentWatch.Export.Tests.Peers;

/// <summary>Against Debian's victoria-metrics, which says 204 and writes to its disk up to ten seconds later.</summary>
public sealed class VictoriaMetricsTests : IAsyncLifetime, IDisposable
{
    /// <summary>Longer than the oldest point it was seen to lose when killed: 10 seconds (version 1.79.5).</summary>
    private static readonly TimeSpan Settle = TimeSpan.FromSeconds(15);

    // Near the machine's own time: the receiver takes nothing that lies far in its future.
    private readonly Instant _start = Instant.FromUnixTimeSeconds(TimeProvider.System.GetUtcNow().ToUnixTimeSeconds()) - Duration.FromDays(60);
    private readonly TemporaryFolder _folder = new();
    private readonly VictoriaMetrics _receiver = new();
    private readonly TimeAhead _time = new();
    private readonly Dictionary<(string Series, long UnixMilliseconds), double> _expected = [];
    private ForwardedKitchen _kitchen = null!;
    private Jar _jar = null!;
    private int _minute;

    public async Task InitializeAsync()
    {
        Open();
        await _kitchen.Places.AddAsync(Make.Counter, default);
        foreach (string slug in (string[])["counter", "window"])
        {
            Sensor sensor = Make.Sensor(0, slug);
            sensor.Placements.Add(new SensorPlacement { Id = Guid.CreateVersion7(), SensorId = sensor.Id, PlaceId = Make.Counter.Id, From = _start });
            await _kitchen.Sensors.AddAsync(sensor,
                new MqttCredential { Id = Guid.CreateVersion7(), User = slug, PasswordHash = "salted", TopicFilter = slug, SensorId = sensor.Id },
                default);
        }
        _jar = (await _kitchen.Jars.AddAsync([Make.Jar(0, (Make.Counter, _start))], default))[0];
    }

    public async Task DisposeAsync()
    {
        await _kitchen.DisposeAsync();
        await _receiver.DisposeAsync();
    }

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Forwarder_ReceiverStartedLateAndKilledThreeTimes_EveryPointIsReadBackOnce()
    {
        // There is nobody yet.
        await HappenAsync(300);
        await _kitchen.Forwarder.RunAsync(default);
        Assert.Contains("Connection refused", _kitchen.Forwarder.Trouble, StringComparison.Ordinal);

        // Started late.
        await StartReceiverAsync();
        await _kitchen.ForwardToTheEndAsync();
        Assert.True(await _kitchen.Cursors.ReadAsync(SeriesKind.Reading, default) > 0);

        for (int round = 0; round < LongRun.Count(1, 5); round++)
        {
            // Killed just after it had taken what it was given; noticed by the next call.
            await HappenAsync(200);
            await _kitchen.Forwarder.RunAsync(default);
            await _receiver.KillAsync();
            await HappenAsync(200);
            await _kitchen.Forwarder.RunAsync(default);
            Assert.NotNull(_kitchen.Forwarder.Trouble);
            await StartReceiverAsync();

            // Killed in the midst of many calls.
            await HappenAsync(5000);
            Task<TimeSpan?> underWay = _kitchen.Forwarder.RunAsync(default);
            await _receiver.KillAsync();
            await underWay;

            // We, too, are started anew.
            await _kitchen.DisposeAsync();
            Open();
            await StartReceiverAsync();
            await HappenAsync(100);
            await _kitchen.Forwarder.RunAsync(default);

            // Killed and there again before anybody noticed.
            await _receiver.KillAsync();
            await _receiver.StartAsync();
            await HappenAsync(100);
            await _kitchen.ForwardToTheEndAsync();
        }

        // What the cursor has passed is on the receiver's disk: once more, with nobody to send anything again.
        await _receiver.KillAsync();
        await _receiver.StartAsync();
        await AssertReadBackOnceAsync();
    }

    private void Open() => _kitchen = new ForwardedKitchen(
        _folder.Path, new InfluxOptions { Address = _receiver.Address.ToString(), Token = "any", Org = "home", Bucket = "kitchen",
        SettleTime = Settle }, _time);

    private async Task StartReceiverAsync()
    {
        await _receiver.StartAsync();
        // Ends the wait after a failure. Nothing that was taken is unproven then, so nothing is proven by it.
        _time.Ahead(TimeSpan.FromMinutes(15));
    }

    /// <summary>Some minutes in the kitchen: readings of two sensors, late and doubtful ones among them, estimates and observations.</summary>
    private async Task HappenAsync(int minutes)
    {
        var readings = new List<Reading>();
        for (int end = _minute + minutes; _minute < end; _minute++)
        {
            readings.Add(Expect(1, "counter", Quantity.Temperature, "temperature", 18 + (_minute / 1024.0), At(_minute)));
            readings.Add(Expect(2, "window", Quantity.Humidity, "humidity", 55 - (_minute / 512.0), At(_minute)));
        }
        Reading late = Expect(2, "window", Quantity.Temperature, "temperature", _minute / 256.0, _start + Duration.FromSeconds(_minute));
        Reading jump = Expect(1, "counter", Quantity.Ph, "ph", 4.25, At(_minute)),
            sentinel = new(2, Quantity.Temperature, 85, At(_minute), At(_minute), TimeSource.Payload);
        await _kitchen.StoreAsync(readings, Verdict.Counts);
        await _kitchen.StoreAsync([late], Verdict.Counts);
        await _kitchen.StoreAsync([jump], Verdict.Jump);
        await _kitchen.StoreAsync([sentinel], Verdict.Sentinel);
        await _kitchen.JudgeAsync([jump], Verdict.Counts);
        await EstimateAsync();
        await ObserveAsync();
    }

    private async Task EstimateAsync()
    {
        SavedEstimate estimate = Make.Estimate(_jar.Id, At(_minute)) with { Inputs = $"{_minute}", PhP50 = 4 + (_minute / 4096.0) };
        await _kitchen.Estimates.NoteAsync([estimate], default);
        foreach ((string field, double value) in (ReadOnlySpan<(string, double)>)
            [("ph_p10", 3.875), ("ph_p50", estimate.PhP50), ("ph_p90", 4.5), ("acidity_p50", 0.75), ("sourness_p50", 61.5),
                ("days_to_target_p50", 2.25)])
            Expect($"estimate_{field}{{jar=1,place=kitchen counter,site=home}}", value, At(_minute));
    }

    private async Task ObserveAsync()
    {
        Instant at = At(_minute);
        await _kitchen.Jars.ObserveAsync(
            [new Look { Opened = false, Id = Guid.CreateVersion7(), JarId = _jar.Id, At = at, EnteredAt = at, By = "Ada" }], default);
        await _kitchen.Jars.ObserveAsync(
            [new Sighting { Kind = SightingKind.BrineLow, Id = Guid.CreateVersion7(), JarId = _jar.Id, At = at, EnteredAt = at, By = "Kim" }],
            default);
        await _kitchen.Jars.ObserveAsync(
            [new Taste { Verdict = TasteVerdict.Nearly, Id = Guid.CreateVersion7(), JarId = _jar.Id, At = at, EnteredAt = at, By = "Ada" }], default);
        await _kitchen.Jars.ObserveAsync(
            [new PhMeasurement { Ph = 4.125, Method = PhMethod.Meter, Id = Guid.CreateVersion7(), JarId = _jar.Id, At = at, EnteredAt = at,
            By = "Ada" }], default);
        foreach ((string kind, double value, int milliseconds) in (ReadOnlySpan<(string, double, int)>)[("check", 0, 0), ("check", 1, 1),
            ("taste", 2, 2), ("ph", 4.125, 3)])
            Expect($"observation_value{{jar=1,kind={kind},place=kitchen counter,site=home}}", value, at + Duration.FromMilliseconds(milliseconds));
    }

    private Reading Expect(int sensorKey, string slug, Quantity quantity, string name, double value, Instant at)
    {
        Expect($"reading_value{{place=kitchen counter,quantity={name},sensor={slug},site=home}}", value, at);
        return new Reading(sensorKey, quantity, value, at, at, TimeSource.Payload);
    }

    private void Expect(string series, double value, Instant at) => _expected.Add((series, at.ToUnixTimeMilliseconds()), value);

    private Instant At(int minute) => _start + Duration.FromMinutes(minute);

    private async Task AssertReadBackOnceAsync()
    {
        List<(string Series, long UnixMilliseconds, double Value)> samples = await _receiver.ExportAsync();
        Assert.Equal(
            _expected.Select(point => (point.Key.Series, point.Key.UnixMilliseconds, point.Value)).Order(),
            samples.Order());
        Assert.Empty(await _kitchen.Cursors.LeftOutAsync(default));
    }
}
