namespace FermentWatch.Kitchen.Forwarding;

/// <summary>A log of ours as the forwarder follows it. Cursors are places in the order of writing: what is entered late comes last.</summary>
public interface IForwardLog<T>
{
    /// <summary>What was written after a cursor and is to be passed on, in the order of writing. 0 begins at the beginning.</summary>
    Task<ForwardSlice<T>> AfterAsync(long cursor, int atMost, CancellationToken cancellationToken);

    /// <summary>What was written last of all that is to be passed on; null where there is nothing.</summary>
    Task<T?> NewestAsync(CancellationToken cancellationToken);

    /// <summary>The last place in the order of writing; 0 for an empty log.</summary>
    Task<long> EndAsync(CancellationToken cancellationToken);
}
