using FermentWatch.Export.Estimates;
using FermentWatch.Export.Forwarding;
using FermentWatch.Kitchen.Forwarding;

namespace FermentWatch.Service.Loops;

/// <summary>
/// What passing series on needs of the loops: the notes of estimates, the forwarder, and a waking sooner than the next minute
/// where the forwarder has asked the receiver to prove that it lives.
/// </summary>
public sealed class SeriesForwarding(EstimateNotes notes, Forwarder forwarder, TimeProvider time) : IForwardingState, IDisposable
{
    private ITimer? _next;

    public EstimateNotes Notes => notes;

    /// <inheritdoc/>
    public string? Trouble => forwarder.Trouble;

    /// <summary>Passes on what can be, and has itself woken when there is more to do.</summary>
    public async Task RunAsync(Action wake, CancellationToken cancellationToken)
    {
        TimeSpan? again = await forwarder.RunAsync(cancellationToken);
        if (again is not { } wait)
            return;
        _next ??= time.CreateTimer(_ => wake(), null, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
        _next.Change(wait, Timeout.InfiniteTimeSpan);
    }

    public void Dispose() => _next?.Dispose();
}
