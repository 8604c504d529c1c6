using NodaTime;

namespace FermentWatch.Kitchen.Forwarding;

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
