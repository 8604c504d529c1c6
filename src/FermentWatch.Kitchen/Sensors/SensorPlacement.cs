using NodaTime;

namespace FermentWatch.Kitchen.Sensors;

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
