using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Service.Pages.Sensors;

/// <summary>What the pages and the API say of one sensor.</summary>
/// <param name="Sensor">The sensor.</param>
/// <param name="Last">Its last reading of each quantity.</param>
/// <param name="Verdicts">How many of its readings have each verdict.</param>
/// <param name="Place">The place it stands in, if any.</param>
/// <param name="Jar">The jar its probe is in, if any.</param>
public sealed record SensorView(
    Sensor Sensor, IReadOnlyList<JudgedReading> Last, IReadOnlyDictionary<Verdict, long> Verdicts, Place? Place, Jar? Jar)
{
    private static readonly Duration SilentAfter = Duration.FromHours(2);

    /// <summary>Where it measures, in words.</summary>
    public string Where => Jar is not null ? $"in jar {Jar.Number}, {Jar.Name}" : Place is not null ? Place.Name : "not given to a place or a jar yet";

    /// <summary>When it was last heard of; null if never.</summary>
    public Instant? LastHeard => Last.Count == 0 ? null : Last.Max(entry => entry.Reading.ReceivedAt);

    /// <summary>Whether nothing came for some hours.</summary>
    public bool IsSilent(Instant now) => LastHeard is { } heard && now - heard > SilentAfter;
}
