using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Probes;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Acts.Sensors;

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
    public string Where => Jar is not null ? $"in jar {Jar.Number}, {Jar.Name}" : Place is not null ? Place.Name : "not given to a place or a jar yet";

    /// <summary>When it was last heard of; null if never.</summary>
    public required Instant? LastHeard { get; init; }
}
