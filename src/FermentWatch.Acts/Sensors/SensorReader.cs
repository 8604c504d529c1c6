using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Probes;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Sensors;

/// <summary>Reads sensors for the pages and the API.</summary>
public sealed class SensorReader(
    ISensorBook sensors, IPlaceBook places, IJarBook jars, IHouseholdBook households, ISourceRuleBook rules, IProbeBook probes, IReadingLog log,
        TimeProvider clock)
{
    /// <summary>The sensor in service of this name in topics, or null.</summary>
    public Task<Sensor?> FindAsync(string slug, CancellationToken cancellationToken) => sensors.FindAsync(slug, cancellationToken);

    /// <summary>What came of a sensor last, and what came of it and could not be used.</summary>
    public async Task<HeardOf> HeardAsync(Sensor sensor, CancellationToken cancellationToken) => new(
        await log.LastAsync(sensor.Key, cancellationToken) is [var last, ..] ? last : null,
        (await log.RejectsAsync(cancellationToken)).FirstOrDefault(each => each.Last.SensorKey == sensor.Key));

    /// <summary>What came in and could not be used.</summary>
    public Task<IReadOnlyList<RejectCount>> RejectsAsync(CancellationToken cancellationToken) => log.RejectsAsync(cancellationToken);

    /// <summary>Every sensor in service, by name.</summary>
    public async Task<IReadOnlyList<SensorView>> InServiceAsync(CancellationToken cancellationToken)
    {
        var known = (await places.AllAsync(cancellationToken)).ToDictionary(place => place.Id);
        var kept = (await jars.KeptAsync(cancellationToken)).ToDictionary(jar => jar.Id);
        Instant now = clock.GetUtcNow().ToInstant();
        Sensor[] inService = [.. (await sensors.AllAsync(cancellationToken)).Where(sensor => sensor.RemovedAt is null).OrderBy(sensor =>
            sensor.Name, StringComparer.OrdinalIgnoreCase)];
        var limits = new SourceLimits(await rules.AllAsync(cancellationToken), await rules.FeedsAsync(cancellationToken));
        IReadOnlyList<ProbeCheck> checks = await probes.StandingAsync(cancellationToken);
        var watch = new SensorWatch(log, inService, limits, checks, (await households.ReadAsync(cancellationToken)).TemperatureUnit, now);
        var views = new List<SensorView>();
        foreach (Sensor sensor in inService)
        {
            SensorPlacement? placement = sensor.PlacementAt(now);
            IReadOnlyList<JudgedReading> last = await log.LastAsync(sensor.Key, cancellationToken);
            views.Add(new SensorView(sensor, last, await log.VerdictCountsAsync(sensor.Key, cancellationToken),
                placement?.PlaceId is { } placeId ? known.GetValueOrDefault(placeId) : null,
                placement?.JarId is { } jarId ? kept.GetValueOrDefault(jarId) : null)
            {
                LastHeard = await log.LastHeardAsync(sensor.Key, cancellationToken),
                Warnings = await watch.WarningsAsync(sensor, last, cancellationToken),
                Probe = ProbeStanding.Of(sensor, last, checks, now),
                Rules = [.. limits.RulesOf(sensor)],
            });
        }
        return views;
    }
}

/// <summary>What was heard of a sensor.</summary>
/// <param name="Last">Its last reading; null where none came.</param>
/// <param name="Wrong">What came of it and could not be used; null where there was none.</param>
public sealed record HeardOf(JudgedReading? Last, RejectCount? Wrong);

/// <summary>What the pages and the API say of one sensor.</summary>
/// <param name="Sensor">The sensor.</param>
/// <param name="Last">Its last reading of each quantity.</param>
/// <param name="Verdicts">How many of its readings have each verdict.</param>
/// <param name="Place">The place it stands in, if any.</param>
/// <param name="Jar">The jar its probe is in, if any.</param>
public sealed record SensorView(
    Sensor Sensor, IReadOnlyList<JudgedReading> Last, IReadOnlyDictionary<Verdict, long> Verdicts, Place? Place, Jar? Jar)
{
    /// <summary>What a person should look at.</summary>
    public IReadOnlyList<SensorWarning> Warnings { get; init; } = [];

    /// <summary>How things stand with its pH probe; null for others.</summary>
    public ProbeStanding? Probe { get; init; }

    /// <summary>The rules by which it is read; none for a sensor made for us.</summary>
    public IReadOnlyList<SourceRule> Rules { get; init; } = [];

    /// <summary>Where it measures, in words.</summary>
    public string Where => Jar is not null ? $"in jar {Jar.Number}, {Jar.Name}" : Place is not null ? Place.Name
        : "not given to a place or a jar yet";

    /// <summary>When it was last heard of; null if never.</summary>
    public required Instant? LastHeard { get; init; }
}
