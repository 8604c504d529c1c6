using NodaTime;

namespace FermentWatch.Kitchen.Members;

/// <summary>The record of guest links.</summary>
public interface IGuestBook
{
    Task AddAsync(GuestLink link, CancellationToken cancellationToken);

    /// <summary>The link whose secret has this hash, expired or not; null if there is none.</summary>
    Task<GuestLink?> FindAsync(string secretHash, CancellationToken cancellationToken);

    /// <summary>Links that were neither withdrawn nor had expired at an instant, the first to expire first.</summary>
    Task<IReadOnlyList<GuestLink>> OpenAsync(Instant now, CancellationToken cancellationToken);

    Task WithdrawAsync(Guid id, Instant now, CancellationToken cancellationToken);
}
