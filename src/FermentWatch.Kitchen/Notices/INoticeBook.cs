using FermentWatch.Kitchen.Members;
using NodaTime;

namespace FermentWatch.Kitchen.Notices;

/// <summary>The outbox.</summary>
public interface INoticeBook
{
    Task<IReadOnlyList<NoticeRoute>> RoutesAsync(CancellationToken cancellationToken);

    Task AddRouteAsync(NoticeRoute route, CancellationToken cancellationToken);

    /// <summary>Notes who answers for a route from now on.</summary>
    Task KeepRouteAsync(Guid routeId, Person by, CancellationToken cancellationToken);

    Task RemoveRouteAsync(Guid routeId, CancellationToken cancellationToken);

    /// <summary>One notice by its id, or null.</summary>
    Task<Notice?> FindAsync(Guid id, CancellationToken cancellationToken);

    /// <summary>Queues notices; those whose key is there already are left out.</summary>
    Task QueueAsync(IReadOnlyList<Notice> notices, CancellationToken cancellationToken);

    /// <summary>
    /// Claims queued notices that are due: counts an attempt and moves their next attempt to <paramref name="claimedUntil"/>
    /// in one step, so that no two claimers get the same one while the claim holds.
    /// </summary>
    Task<IReadOnlyList<Notice>> ClaimAsync(Instant now, Instant claimedUntil, int atMost, CancellationToken cancellationToken);

    /// <summary>Writes how an attempt ended: state, next attempt, trouble.</summary>
    Task SettleAsync(Notice notice, CancellationToken cancellationToken);

    /// <summary>How many notices wait to be delivered, by channel; channels for which none does are left out.</summary>
    Task<IReadOnlyDictionary<Channel, int>> WaitingAsync(CancellationToken cancellationToken);

    /// <summary>The latest notices, newest first, for the page that says what is stuck and why.</summary>
    Task<IReadOnlyList<Notice>> LatestAsync(int atMost, CancellationToken cancellationToken);
}
