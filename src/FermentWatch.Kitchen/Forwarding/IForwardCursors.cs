using NodaTime;

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

/// <summary>How the passing on of series stands. There is none where nothing is passed on.</summary>
public interface IForwardingState
{
    /// <summary>Why points wait, in one line; null when none do.</summary>
    string? Trouble { get; }
}

/// <summary>One point that was left out.</summary>
/// <param name="Reason">The name under which it is counted.</param>
/// <param name="Example">The point as it would have gone out, or what is known of it.</param>
/// <param name="Explanation">What the receiver said, or what is missing.</param>
/// <param name="At">When it was left out.</param>
public sealed record NotForwarded(NotForwardedReason Reason, string Example, string Explanation, Instant At);

/// <summary>Why a point was left out.</summary>
public enum NotForwardedReason
{
    /// <summary>The receiver took others, but never this one.</summary>
    Refused = 1,

    /// <summary>The sensor or jar it belongs to is not in the records.</summary>
    UnknownOwner = 2,
}

/// <summary>How many points of a series were left out for one reason.</summary>
/// <param name="Series">The series.</param>
/// <param name="Last">The last of them.</param>
/// <param name="Count">How many, at least 1.</param>
public sealed record NotForwardedCount(SeriesKind Series, NotForwarded Last, long Count);
