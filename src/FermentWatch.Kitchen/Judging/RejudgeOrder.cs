using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Kitchen.Judging;

/// <summary>What a sensor has in the log is to be judged again, because what it is judged by has changed.</summary>
public sealed class RejudgeOrder
{
    public required Guid Id { get; init; }

    public required Guid SensorId { get; init; }

    /// <summary>The quantity; null for all it measures.</summary>
    public Quantity? Quantity { get; init; }
}
