namespace FermentWatch.Kitchen.Judging;

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
