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

/// <summary>What became of a group of readings, once it was committed.</summary>
/// <param name="Stored">Rows that were new.</param>
/// <param name="Duplicates">Rows that were there already with the same value.</param>
/// <param name="Conflicts">Rows whose sensor, quantity and instant were there with another value; the first stays.</param>
public readonly record struct AppendResult(int Stored, int Duplicates, int Conflicts);
