using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Notices;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace FermentWatch.Storage.Records.Books;

/// <inheritdoc cref="INoticeBook"/>
internal sealed class NoticeBook(IDbContextFactory<RecordsContext> contexts) : INoticeBook
{
    public async Task<IReadOnlyList<NoticeRoute>> RoutesAsync(CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.NoticeRoutes.AsNoTracking()
            .OrderBy(route => route.Person).ThenBy(route => route.Id).ToListAsync(cancellationToken);
    }

    public async Task AddRouteAsync(NoticeRoute route, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        context.NoticeRoutes.Add(route);
        await context.SaveChangesAsync(cancellationToken);
    }

    public async Task KeepRouteAsync(Guid routeId, Person by, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await context.NoticeRoutes.Where(route => route.Id == routeId).ExecuteUpdateAsync(row =>
            row.SetProperty(route => route.MadeBy, by.Name).SetProperty(route => route.MadeById, by.AccountId), cancellationToken);
    }

    public async Task RemoveRouteAsync(Guid routeId, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await context.NoticeRoutes.Where(route => route.Id == routeId).ExecuteDeleteAsync(cancellationToken);
    }

    public async Task<Notice?> FindAsync(Guid id, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.Notices.AsNoTracking().FirstOrDefaultAsync(notice => notice.Id == id, cancellationToken);
    }

    public async Task QueueAsync(IReadOnlyList<Notice> notices, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        await Outbox.QueueAsync(context, notices, cancellationToken);
        await context.SaveChangesAsync(cancellationToken);
        await transaction.CommitAsync(cancellationToken);
    }

    public async Task<IReadOnlyList<Notice>> ClaimAsync(Instant now, Instant claimedUntil, int atMost, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        // The transaction takes the write lock before it reads: two claimers come one after the other.
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        var due = await context.Notices
            .Where(notice => notice.State == NoticeState.Queued && notice.NextAttemptAt <= now)
            .OrderBy(notice => notice.NextAttemptAt).ThenBy(notice => notice.Key).Take(atMost).ToListAsync(cancellationToken);
        foreach (var notice in due)
        {
            notice.Attempts = Math.Clamp(notice.Attempts, 0, int.MaxValue - 1) + 1;
            notice.NextAttemptAt = claimedUntil;
            notice.ClaimedUntil = claimedUntil;
        }

        await context.SaveChangesAsync(cancellationToken);
        await transaction.CommitAsync(cancellationToken);
        return due;
    }

    public async Task SettleAsync(Notice notice, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        // A claim that ran out may be another's by now: what it settled stands.
        if (notice.ClaimedUntil is { } claim
            && !await context.Notices.AnyAsync(each =>
                each.Id == notice.Id && each.State == NoticeState.Queued && each.NextAttemptAt == claim, cancellationToken))
            return;
        notice.ClaimedUntil = null;
        context.Notices.Update(notice);
        await context.SaveChangesAsync(cancellationToken);
        await transaction.CommitAsync(cancellationToken);
    }

    public async Task<IReadOnlyDictionary<Channel, int>> WaitingAsync(CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.Notices.Where(notice => notice.State == NoticeState.Queued)
            .Join(context.NoticeRoutes, notice => notice.RouteId, route => route.Id, (_, route) => route.Channel)
            .GroupBy(channel => channel).ToDictionaryAsync(group => group.Key, group => group.Count(), cancellationToken);
    }

    public async Task<IReadOnlyList<Notice>> LatestAsync(int atMost, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.Notices.AsNoTracking()
            .OrderByDescending(notice => notice.DueAt).ThenByDescending(notice => notice.Id).Take(atMost).ToListAsync(cancellationToken);
    }
}

/// <summary>Putting notices into the outbox within a transaction of the caller's.</summary>
internal static class Outbox
{
    /// <summary>Adds, not yet saved, those whose key is not there.</summary>
    internal static async Task QueueAsync(RecordsContext context, IReadOnlyList<Notice> notices, CancellationToken cancellationToken)
    {
        string[] keys = [.. notices.Select(notice => notice.Key)];
        var known = await context.Notices
            .Where(notice => keys.Contains(notice.Key)).Select(notice => notice.Key).ToListAsync(cancellationToken);
        context.Notices.AddRange(notices.DistinctBy(notice => notice.Key).ExceptBy(known, notice => notice.Key));
    }
}
