namespace FermentWatch.Service.Loops;

/// <summary>
/// Keeps work that is asked for at every reading from taking a processor to itself: after a pass that took long the next one waits
/// three times as long, so that readings that come in, and people, have the machine for three quarters of the time.
/// </summary>
internal sealed class Restraint
{
    private static readonly TimeSpan Unnoticed = TimeSpan.FromMilliseconds(100);
    private static readonly TimeSpan LongestRest = TimeSpan.FromSeconds(5);

    // What work costs is told by the machine's clock, whatever time the household has.
    private readonly TimeProvider _machine = TimeProvider.System;
    private TimeSpan _rest;
    private long _endedAt;

    /// <summary>Rests as long as is left to rest, then does the work.</summary>
    public async Task<T> RunAsync<T>(Func<Task<T>> work, CancellationToken cancellationToken)
    {
        if (_rest - _machine.GetElapsedTime(_endedAt) is { Ticks: > 0 } left)
            await Task.Delay(left, _machine, cancellationToken);
        long begun = _machine.GetTimestamp();
        try
        {
            return await work();
        }
        finally
        {
            _endedAt = _machine.GetTimestamp();
            TimeSpan took = _machine.GetElapsedTime(begun, _endedAt);
            _rest = took < Unnoticed ? TimeSpan.Zero : took * 3 < LongestRest ? took * 3 : LongestRest;
        }
    }
}
