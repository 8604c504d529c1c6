using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Service.Loops;

/// <summary>The door of the log, which says after each commit that readings wait to be judged.</summary>
public sealed class TellingIntake(IReadingIntake log, WrittenDown written) : IReadingIntake
{
    public async Task<AppendResult> AppendAsync(IReadOnlyList<Reading> readings, CancellationToken cancellationToken)
    {
        AppendResult result = await log.AppendAsync(readings, cancellationToken);
        if (result.Stored > 0)
            written.SayReadings();
        return result;
    }

    public Task RejectAsync(Reject reject, CancellationToken cancellationToken) => log.RejectAsync(reject, cancellationToken);
}
