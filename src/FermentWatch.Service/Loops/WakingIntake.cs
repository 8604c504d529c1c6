using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Service.Loops;

/// <summary>The door of the log, which wakes the judging loop after each commit.</summary>
public sealed class WakingIntake(IReadingIntake log, ServiceLoops loops) : IReadingIntake
{
    public async Task<AppendResult> AppendAsync(IReadOnlyList<Reading> readings, CancellationToken cancellationToken)
    {
        AppendResult result = await log.AppendAsync(readings, cancellationToken);
        if (result.Stored > 0)
            loops.Judging.Wake();
        return result;
    }

    public Task RejectAsync(Reject reject, CancellationToken cancellationToken) => log.RejectAsync(reject, cancellationToken);
}
