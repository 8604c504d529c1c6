namespace FermentWatch.Kitchen.Readings;

/// <summary>The door of the reading log: where decoded readings are written down before they are acknowledged.</summary>
public interface IReadingIntake
{
    /// <summary>
    /// Completes after the readings are committed to the disk, possibly together with those of other callers.
    /// Readings with <see cref="TimeSource.Arrival"/> whose instant is taken by another value move to the next free millisecond.
    /// </summary>
    /// <exception cref="IOException">The log could not be written; nothing of the group was stored.</exception>
    Task<AppendResult> AppendAsync(IReadOnlyList<Reading> readings, CancellationToken cancellationToken);

    /// <summary>Counts something that could not be used and keeps it as the last example of its topic and reason.</summary>
    Task RejectAsync(Reject reject, CancellationToken cancellationToken);
}
