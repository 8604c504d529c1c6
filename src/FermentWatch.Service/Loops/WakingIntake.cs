using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Service.Loops;

/// <summary>
/// The door of the log, which wakes the judging loop after each commit. The loops come late, because one of them has its way out
/// through the broker whose door this is.
/// </summary>
public sealed class WakingIntake(IReadingIntake log, Lazy<ServiceLoops> loops) : IReadingIntake
{
    public async Task<AppendResult> AppendAsync(IReadOnlyList<Reading> readings, CancellationToken cancellationToken)
    {
        AppendResult result = await log.AppendAsync(readings, cancellationToken);
        if (result.Stored > 0)
            loops.Value.Judging.Wake();
        return result;
    }

    public Task RejectAsync(Reject reject, CancellationToken cancellationToken) => log.RejectAsync(reject, cancellationToken);
}
