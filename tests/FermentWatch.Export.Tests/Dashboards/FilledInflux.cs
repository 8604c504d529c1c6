using System.Text.Json;
using FermentWatch.Export.Points;
using FermentWatch.Export.Receiving;
using FermentWatch.Export.Tests.Doubles;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Forwarding;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.TestKit;
using InfluxDB.Client.Writes;
using NodaTime;
using TasteVerdict = FermentWatch.Kitchen.Observations.TasteVerdict;

namespace FermentWatch.Export.Tests.Dashboards;

/// <summary>Two days of a small household in Debian's influxdb, written by the product's own writer.</summary>
public sealed class FilledInflux : IAsyncLifetime, IAsyncDisposable
{
    private const string Database = "kitchen", Site = "number nine";

    private readonly InfluxDb _influx = new();
    private readonly Jar _jar;
    private readonly OwnerNames _names;

    public FilledInflux()
    {
        _jar = Make.Jar(14, (Make.Counter, Ago(60 * 24)));
        _names = new OwnerNames([Placed(1, "counter", Make.Counter.Id), Placed(2, "cellar", Make.Cellar.Id)], [_jar], [Make.Counter, Make.Cellar]);
    }

    /// <summary>The last whole hour: everything was written up to then.</summary>
    public Instant Now { get; } = Instant.FromUnixTimeSeconds(TimeProvider.System.GetUtcNow().ToUnixTimeSeconds() / 3600 * 3600);

    public async Task InitializeAsync()
    {
        await _influx.StartAsync(Database);
        await using WriteCallOfVersion2 call = await WriteCallOfVersion2.BeforeAsync(_influx);
        using var receiver = new InfluxReceiver(new InfluxOptions { Address = call.Address, Token = "any", Org = "home", Bucket = Database });
        PointData[] points = [.. Readings().Select(reading => SeriesPoints.Of(reading, _names, Site)!),
            .. Estimates().Select(estimate => SeriesPoints.Of(estimate, _names, Site)!),
            .. Observations().Select(observation => SeriesPoints.Of(new LoggedObservation(observation, 0), _names, Site)!)];
        WriteOutcome outcome = await receiver.WriteAsync(points, default);
        if (outcome.Result != WriteResult.Taken)
            throw new InvalidOperationException(outcome.Trouble);
    }

    public async Task DisposeAsync() => await _influx.DisposeAsync();

    async ValueTask IAsyncDisposable.DisposeAsync() => await _influx.DisposeAsync();

    /// <summary>What a query of a board gives, with every value of every variable chosen.</summary>
    internal async Task<IReadOnlyList<JsonElement>> AskAsync(Board board, BoardQuery query)
    {
        var chosen = new Dictionary<string, string[]>();
        foreach (BoardVariable variable in board.Variables)
            chosen[variable.Name] = await ValuesAsync(FilledQuery.Of(variable.Text, "1d", Now, "15m", chosen));
        return await _influx.QueryAsync(Database, FilledQuery.Of(query.Text, query.Span, Now, "15m", chosen));
    }

    private async Task<string[]> ValuesAsync(string query) => [.. (await _influx.QueryAsync(Database, query))
        .SelectMany(series => series.GetProperty("values").EnumerateArray()).Select(row => row[1].GetString()!)];

    /// <summary>Each quarter hour, but for two hours of silence; the cellar each hour.</summary>
    private IEnumerable<Reading> Readings()
    {
        for (int quarter = 0; quarter <= 48 * 4; quarter++)
            if (quarter is <= 4 * 4 or >= 6 * 4)
                yield return Reading(1, Quantity.Temperature, quarter switch { 0 => 21.5, 29 * 4 => 15.25, 30 * 4 => 26.5, _ => 20 }, quarter / 4.0);
        for (int hour = 0; hour <= 48; hour++)
        {
            yield return Reading(2, Quantity.Temperature, 12.25, hour);
            yield return Reading(2, Quantity.Humidity, hour == 0 ? 61 : 80, hour);
        }
    }

    private IEnumerable<SavedEstimate> Estimates() =>
        from day in ((int Ago, double Ph, double DaysLeft)[])[(3, 4.75, 3.5), (2, 4.5, 2.5), (1, 4.25, 1.5), (0, 4.0625, -0.5)]
        select Make.Estimate(_jar.Id, Ago(24 * day.Ago)) with
        {
            PhP10 = day.Ph - 0.125, PhP50 = day.Ph, PhP90 = day.Ph + 0.125, DaysToTargetP50 = day.DaysLeft,
        };

    private IEnumerable<Observation> Observations() =>
    [
        new PhMeasurement
        {
            Ph = 4.125, Method = PhMethod.Meter, Id = Guid.CreateVersion7(), JarId = _jar.Id, At = Ago(24), EnteredAt = Ago(24), By = "Ada",
        },
        new Titration { PercentLactic = 0.875, Id = Guid.CreateVersion7(), JarId = _jar.Id, At = Ago(23), EnteredAt = Ago(23), By = "Ada" },
        new Look { Opened = false, Id = Guid.CreateVersion7(), JarId = _jar.Id, At = Ago(30), EnteredAt = Ago(30), By = "Ada" },
        new Sighting { Kind = SightingKind.BrineLow, Id = Guid.CreateVersion7(), JarId = _jar.Id, At = Ago(20), EnteredAt = Ago(20), By = "Kim" },
        new Taste { Verdict = TasteVerdict.Nearly, Id = Guid.CreateVersion7(), JarId = _jar.Id, At = Ago(10), EnteredAt = Ago(10), By = "Ada" },
    ];

    private Instant Ago(double hours) => Now - Duration.FromHours(hours);

    private Reading Reading(int sensorKey, Quantity quantity, double value, double hoursAgo) =>
        new(sensorKey, quantity, value, Ago(hoursAgo), Ago(hoursAgo), TimeSource.Payload);

    private Sensor Placed(int key, string slug, Guid place)
    {
        Sensor sensor = Make.Sensor(key, slug);
        sensor.Placements.Add(new SensorPlacement { Id = Guid.CreateVersion7(), SensorId = sensor.Id, PlaceId = place, From = Ago(60 * 24) });
        return sensor;
    }
}
