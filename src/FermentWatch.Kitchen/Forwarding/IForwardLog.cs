using FermentWatch.Kitchen.Observations;
using NodaTime;

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

    /// <summary>How much that is to be passed on was written after a cursor.</summary>
    Task<WaitingEntries> WaitingAsync(long cursor, CancellationToken cancellationToken);
}

/// <summary>What of a log waits to be passed on.</summary>
/// <param name="Count">How many entries, 0 or more.</param>
/// <param name="Oldest">When the one that came in first did; null where none waits.</param>
public sealed record WaitingEntries(long Count, Instant? Oldest);

/// <summary>A piece of a log in the order in which it was written, whatever the times it tells of.</summary>
/// <param name="Entries">What is to be passed on, possibly nothing.</param>
/// <param name="Cursor">Where the next slice begins: everything to be passed on up to there is in this slice or before it.</param>
public sealed record ForwardSlice<T>(IReadOnlyList<T> Entries, long Cursor);

/// <summary>An observation as it is passed on.</summary>
/// <param name="Observation">What was seen.</param>
/// <param name="Before">How many observations of the same jar and instant were entered before it; never changes.</param>
public sealed record LoggedObservation(Observation Observation, int Before)
{
    /// <summary>
    /// When it was seen, moved on by one millisecond for each one before it, so that two of the same instant are two points.
    /// </summary>
    public Instant At => Observation.At + Duration.FromMilliseconds(Before);
}
