using FermentWatch.Kitchen.Notices;
using NodaTime;

namespace FermentWatch.Kitchen.Occasions;

/// <summary>Something to be told of once.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Subject">Id of the jar, place or sensor it is about.</param>
/// <param name="Cause">What brought it about; the same cause is never told twice.</param>
/// <param name="Headline">What, in a few words, without the jars.</param>
/// <param name="Jars">Which: numbers of the jars concerned; may be empty where it is about a sensor.</param>
/// <param name="Body">Why now, and what to do.</param>
public sealed record Occasion(OccasionKind Kind, Guid Subject, string Cause, string Headline, IReadOnlyList<int> Jars, string Body)
{
    /// <summary>True for a state that goes on, such as warmth: while it does it is one cause; after a day without it, it is another.</summary>
    public bool Lasting { get; init; }

    /// <summary>Who knows already, having seen it; null where nobody does.</summary>
    public string? KnownTo { get; init; }

    /// <summary>The name of the one jar it is about; null where it is about several or none.</summary>
    public string? JarName { get; init; }
}

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

/// <summary>The record of what was told, and of what this household does not want to be told.</summary>
public interface IOccasionBook
{
    /// <summary>Everything that was told.</summary>
    Task<IReadOnlyList<ToldOccasion>> ToldAsync(CancellationToken cancellationToken);

    /// <summary>
    /// Records what is told and queues its notices in one transaction. False, and nothing is written, if one of the keys is there
    /// already.
    /// </summary>
    Task<bool> TellAsync(IReadOnlyList<ToldOccasion> occasions, IReadOnlyList<Notice> notices, CancellationToken cancellationToken);

    /// <summary>Writes that lasting occasions are still so.</summary>
    Task StillSoAsync(IReadOnlyList<Guid> toldIds, Instant now, CancellationToken cancellationToken);

    /// <summary>The kinds that are muted.</summary>
    Task<IReadOnlySet<OccasionKind>> MutedAsync(CancellationToken cancellationToken);

    /// <summary>Mutes a kind, or tells of it again.</summary>
    Task MuteAsync(OccasionKind kind, bool muted, CancellationToken cancellationToken);
}
