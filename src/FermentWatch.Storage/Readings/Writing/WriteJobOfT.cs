namespace FermentWatch.Storage.Readings.Writing;

/// <summary>A job with a result for its caller.</summary>
internal sealed class WriteJob<T>(int rows, Func<WriteSession, T> write) : WriteJob
{
    // The writer must not run its callers' code: their continuations go to the pool.
    private readonly TaskCompletionSource<T> _done = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private T _result = default!;

    /// <summary>Completes after the commit.</summary>
    internal Task<T> Done => _done.Task;

    internal override int Rows => rows;

    internal override void Write(WriteSession session) => _result = write(session);

    internal override void Succeed() => _done.SetResult(_result);

    internal override void Fail(Exception trouble) => _done.SetException(trouble);

    /// <summary>Cancels the job unless the writer has it: then it is too late, and the commit decides.</summary>
    internal void Withdraw(CancellationToken cancellationToken)
    {
        if (TryWithdraw())
            _done.SetCanceled(cancellationToken);
    }
}
