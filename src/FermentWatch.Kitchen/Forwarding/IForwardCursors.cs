namespace FermentWatch.Kitchen.Forwarding;

/// <summary>Up to where each series has been passed on, kept through crashes, and what had to be left out.</summary>
public interface IForwardCursors
{
    /// <summary>The place up to which a series has been passed on; 0 for one that never was.</summary>
    Task<long> ReadAsync(SeriesKind series, CancellationToken cancellationToken);

    /// <summary>Moves the place, and counts what was left out before it, in one step.</summary>
    Task MoveAsync(SeriesKind series, long cursor, IReadOnlyList<NotForwarded> leftOut, CancellationToken cancellationToken);

    /// <summary>What was left out, by series and reason.</summary>
    Task<IReadOnlyList<NotForwardedCount>> LeftOutAsync(CancellationToken cancellationToken);
}

/// <summary>The series that are passed on to a time-series database of the household's own.</summary>
public enum SeriesKind
{
    Reading = 1,
    Estimate = 2,
    Observation = 3,
}
