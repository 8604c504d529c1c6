using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Benchmarks.Intake;

/// <summary>A log with one commit a message, for comparison.</summary>
internal sealed class OneByOne(IReadingIntake log) : IReadingIntake, IDisposable
{
    private readonly SemaphoreSlim _one = new(1);

    public async Task<AppendResult> AppendAsync(IReadOnlyList<Reading> readings, CancellationToken cancellationToken)
    {
        await _one.WaitAsync(cancellationToken);
        try
        {
            return await log.AppendAsync(readings, cancellationToken);
        }
        finally
        {
            _one.Release();
        }
    }

    public Task RejectAsync(Reject reject, CancellationToken cancellationToken) => log.RejectAsync(reject, cancellationToken);

    public void Dispose() => _one.Dispose();
}
