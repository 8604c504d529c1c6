using FermentWatch.Export.Receiving;
using FermentWatch.Kitchen.Forwarding;
using NodaTime;

namespace FermentWatch.Export.Forwarding;

/// <summary>
/// How far one series is. Two places: the head, in memory, up to which the receiver took points; and the cursor, on our disk, up to
/// which it must have them on its own. The cursor follows when the receiver answers by the same connection a settle time later: it
/// has then lived on for that long. Another connection, a failure or our own start send everything after the cursor again.
/// </summary>
internal sealed class SeriesProgress(Series series, IForwardCursors cursors, IPointReceiver receiver, TimeSpan settleTime, TimeProvider time,
    IClock clock)
{
    /// <summary>Points in one call.</summary>
    internal const int BatchSize = 2000;

    /// <summary>
    /// Where no connection is ever kept (some proxies), nothing can be proven: what was taken this often, a settle time apart, is
    /// believed.
    /// </summary>
    internal const int TakenOftenEnough = 6;

    private static readonly WriteOutcome NothingToLose = WriteOutcome.Taken(WriteOutcome.NoConnection);

    private readonly Queue<UnprovenSlice> _unproven = new();
    private long? _cursor;
    private long _head;
    private int _sentAgain;

    public SeriesKind Kind => series.Kind;

    /// <summary>When this series alone may be tried again: its points were refused, not the receiver unreachable.</summary>
    public Retry Retry { get; } = new(time);

    /// <summary>Why points of this series are held back; null when none are.</summary>
    public string? Held { get; set; }

    /// <summary>What was left out since this was asked last.</summary>
    public List<NotForwarded> News { get; } = [];

    /// <summary>Until the oldest slice can be proven; null if there is none.</summary>
    public TimeSpan? UntilProof =>
        !_unproven.TryPeek(out UnprovenSlice? oldest) ? null
        : settleTime - Age(oldest) is var left && left > TimeSpan.Zero ? left : TimeSpan.Zero;

    /// <summary>Sends what is new, then asks for proof where that is due. Returns what ended it early, or null.</summary>
    public async Task<WriteOutcome?> RunAsync(CancellationToken cancellationToken)
    {
        await OpenAsync(cancellationToken);
        while (true)
        {
            WriteOutcome? trouble = Retry.Left > TimeSpan.Zero ? null : await SendNewAsync(cancellationToken);
            if (trouble is { Result: WriteResult.TryAgain })
                return trouble;
            long head = _head;
            if (await AskForProofAsync(cancellationToken) is { } silent)
                return silent;
            if (trouble is not null || _head >= head)
                return trouble;
        }
    }

    /// <summary>Goes back to the cursor: what the receiver took since may be lost.</summary>
    public void GoBack()
    {
        _unproven.Clear();
        _head = _cursor ?? 0;
        _sentAgain = 0;
    }

    private async Task OpenAsync(CancellationToken cancellationToken)
    {
        if (_cursor is not null)
            return;
        long cursor = await cursors.ReadAsync(series.Kind, cancellationToken);
        // Beyond the end of the log: an older backup of it was put back. The same points once more do no harm.
        _head = cursor <= await series.EndAsync(cancellationToken) ? cursor : 0;
        _cursor = _head;
    }

    private async Task<WriteOutcome?> SendNewAsync(CancellationToken cancellationToken)
    {
        while (true)
        {
            PointSlice slice = await series.AfterAsync(_head, BatchSize, cancellationToken);
            if (slice.Points.Count == 0 && slice.LeftOut.Count == 0)
            {
                _head = slice.Cursor;
                return null;
            }
            (WriteOutcome outcome, UnprovenSlice? unproven) = await SendAsync(slice, cancellationToken);
            if (unproven is null)
                return outcome;
            _head = unproven.Cursor;
            _unproven.Enqueue(unproven);
            if (outcome.Connection != WriteOutcome.NoConnection)
                await ProveAsync(outcome.Connection, cancellationToken);
        }
    }

    private async Task<(WriteOutcome Outcome, UnprovenSlice? Unproven)> SendAsync(PointSlice slice, CancellationToken cancellationToken)
    {
        if (slice.Points.Count == 0)
            return (NothingToLose, new UnprovenSlice(slice.Cursor, time.GetTimestamp(), WriteOutcome.NoConnection, null, slice.LeftOut));
        WriteOutcome whole = await receiver.WriteAsync(slice.Points, cancellationToken);
        if (whole.Result == WriteResult.Taken)
            return (whole, new UnprovenSlice(slice.Cursor, time.GetTimestamp(), whole.Connection, slice.Points[^1], slice.LeftOut));
        if (whole.Result == WriteResult.TryAgain)
            return (whole, null);

        // Is it these points, or does it refuse all? The newest point tells: only if that is taken are others left out.
        if (await series.NewestAsync(cancellationToken) is not { } newest)
            return (whole, null);
        WriteOutcome probe = await receiver.WriteAsync([newest], cancellationToken);
        if (probe.Result != WriteResult.Taken)
            return (probe, null);
        var search = new RefusedPointSearch(receiver, clock);
        if (await search.PartAsync(slice.Points, whole.Trouble!, cancellationToken) is { } trouble)
            return (trouble, null);
        return (WriteOutcome.Taken(search.Connection), new UnprovenSlice(
            slice.Cursor, time.GetTimestamp(), search.Connection, search.LastTaken, [.. slice.LeftOut, .. search.Refused]));
    }

    /// <summary>Sends the last point once more where a slice is old enough: the same point, and an answer by a connection.</summary>
    private async Task<WriteOutcome?> AskForProofAsync(CancellationToken cancellationToken)
    {
        if (UntilProof != TimeSpan.Zero)
            return null;
        WriteOutcome outcome = _unproven.LastOrDefault(slice => slice.Last is not null)?.Last is { } last
            ? await receiver.WriteAsync([last], cancellationToken)
            : NothingToLose;
        if (outcome.Result != WriteResult.Taken)
            return outcome;
        await ProveAsync(outcome.Connection, cancellationToken);
        return null;
    }

    private async Task ProveAsync(long connection, CancellationToken cancellationToken)
    {
        UnprovenSlice? proven = null;
        var leftOut = new List<NotForwarded>();
        while (_unproven.TryPeek(out UnprovenSlice? oldest) && Age(oldest) >= settleTime && IsProven(oldest, connection))
        {
            proven = _unproven.Dequeue();
            leftOut.AddRange(proven.LeftOut);
        }
        if (proven is not null)
        {
            await cursors.MoveAsync(series.Kind, proven.Cursor, leftOut, cancellationToken);
            _cursor = proven.Cursor;
            _sentAgain = 0;
            News.AddRange(leftOut);
        }
        if (UntilProof == TimeSpan.Zero)
        {
            int sentAgain = _sentAgain + 1;
            GoBack();
            _sentAgain = sentAgain;
        }
    }

    private bool IsProven(UnprovenSlice slice, long connection) =>
        slice.Last is null || slice.Connection == connection || _sentAgain >= TakenOftenEnough - 1;

    private TimeSpan Age(UnprovenSlice slice) => time.GetElapsedTime(slice.TakenAt);
}
