namespace FermentWatch.Storage.Readings.Writing;

/// <summary>One caller's group of writes, which is committed whole or not at all.</summary>
internal abstract class WriteJob
{
    private const int Waiting = 0;
    private const int Taken = 1;
    private const int Withdrawn = 2;

    private int _stage = Waiting;

    /// <summary>About how many rows it writes; bounds what goes into one commit.</summary>
    internal abstract int Rows { get; }

    /// <summary>The writer claims the job; false if its caller has withdrawn it.</summary>
    internal bool TryTake() => Interlocked.CompareExchange(ref _stage, Taken, Waiting) == Waiting;

    /// <summary>Writes within the transaction that is open. May run again if that transaction fails.</summary>
    internal abstract void Write(WriteSession session);

    /// <summary>The commit is on the disk.</summary>
    internal abstract void Succeed();

    /// <summary>Nothing of the job was stored.</summary>
    internal abstract void Fail(Exception trouble);

    /// <summary>The caller withdraws the job; false if the writer has it already.</summary>
    protected bool TryWithdraw() => Interlocked.CompareExchange(ref _stage, Withdrawn, Waiting) == Waiting;
}
