using FermentWatch.Kitchen.Notices;
using NodaTime;

namespace FermentWatch.Kitchen.Occasions;

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
