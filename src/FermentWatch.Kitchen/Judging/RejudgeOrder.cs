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

/// <summary>
/// Orders to judge again. Books write them in the transaction that changes a rule or a calibration, in whatever process, so that
/// none is lost between the two.
/// </summary>
public interface IRejudgeBook
{
    /// <summary>Orders not yet carried out, the oldest first.</summary>
    Task<IReadOnlyList<RejudgeOrder>> PendingAsync(CancellationToken cancellationToken);

    /// <summary>Strikes off an order that was carried out.</summary>
    Task DoneAsync(Guid orderId, CancellationToken cancellationToken);
}
