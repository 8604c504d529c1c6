using NodaTime;

namespace FermentWatch.Kitchen.Occasions;

/// <summary>An occasion that was told, or came while its kind was muted.</summary>
public sealed class ToldOccasion
{
    public required Guid Id { get; init; }

    /// <summary>Kind, subject and cause, and for a lasting one the date; unique.</summary>
    public required string Key { get; init; }

    public required OccasionKind Kind { get; init; }

    /// <summary>The jar, place or sensor.</summary>
    public required Guid Subject { get; init; }

    public required string Cause { get; init; }

    public required Instant ToldAt { get; init; }

    /// <summary>When it was last so; grows for a lasting one.</summary>
    public required Instant LastSeenAt { get; set; }
}
