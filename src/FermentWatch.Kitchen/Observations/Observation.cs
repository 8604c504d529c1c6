using NodaTime;

namespace FermentWatch.Kitchen.Observations;

/// <summary>Something a person saw, measured, tasted or did. Only added to: a correction takes one back and adds another.</summary>
public abstract class Observation
{
    public required Guid Id { get; init; }

    public required Guid JarId { get; init; }

    /// <summary>When it was seen.</summary>
    public required Instant At { get; init; }

    /// <summary>When it was entered.</summary>
    public required Instant EnteredAt { get; init; }

    /// <summary>Who saw it, by the name the household uses.</summary>
    public required string By { get; init; }

    /// <summary>The account of whoever saw it; null for a guest, a button or the command line, and where it was not noted.</summary>
    public Guid? ById { get; init; }

    public string? Note { get; init; }

    /// <summary>When it was taken back; null while it stands.</summary>
    public Instant? VoidedAt { get; set; }

    public string? VoidedBy { get; set; }
}

/// <summary>Somebody looked at the jar and all was well.</summary>
public sealed class Look : Observation
{
    /// <summary>True if the jar was opened, false if looked at through the glass.</summary>
    public required bool Opened { get; init; }
}
