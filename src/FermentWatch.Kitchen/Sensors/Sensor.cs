using NodaTime;

namespace FermentWatch.Kitchen.Sensors;

/// <summary>A device that reports to us.</summary>
public sealed class Sensor
{
    public required Guid Id { get; init; }

    /// <summary>Short key under which the reading log files it; given by the book when the sensor is added, never used again.</summary>
    public int Key { get; init; }

    /// <summary>Its name in topics: lower case letters, digits and hyphens, unique.</summary>
    public required string Slug { get; init; }

    /// <summary>What the household calls it.</summary>
    public required string Name { get; set; }

    public required Instant AddedAt { get; init; }

    /// <summary>When it was taken out of service; its readings stay.</summary>
    public Instant? RemovedAt { get; set; }

    /// <summary>Where it stood from when on, by <see cref="SensorPlacement.From"/>.</summary>
    public List<SensorPlacement> Placements { get; } = [];

    /// <summary>Where it stood at an instant; null where nobody had said so yet.</summary>
    public SensorPlacement? PlacementAt(Instant instant) =>
        Placements.Where(placement => placement.From <= instant).MaxBy(placement => placement.From);
}

/// <summary>From when on a sensor measures a place or, with its probe in the brine, one jar.</summary>
public sealed class SensorPlacement
{
    public required Guid Id { get; init; }

    public required Guid SensorId { get; init; }

    /// <summary>The place it stands in; null if it is in a jar or put away.</summary>
    public Guid? PlaceId { get; init; }

    /// <summary>The jar its probe is in; null if it measures a place or is put away.</summary>
    public Guid? JarId { get; init; }

    public required Instant From { get; init; }
}
