using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Occasions;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace FermentWatch.Storage.Records.Books;

/// <inheritdoc cref="IOccasionBook"/>
internal sealed class OccasionBook(IDbContextFactory<RecordsContext> contexts) : IOccasionBook
{
    public async Task<IReadOnlyList<ToldOccasion>> ToldAsync(CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.ToldOccasions.AsNoTracking()
            .OrderByDescending(told => told.LastSeenAt).ThenByDescending(told => told.Id).ToListAsync(cancellationToken);
    }

    public async Task<bool> TellAsync(IReadOnlyList<ToldOccasion> occasions, IReadOnlyList<Notice> notices, CancellationToken cancellationToken)
    {
        string[] keys = [.. occasions.Select(occasion => occasion.Key)];
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        if (await context.ToldOccasions.AnyAsync(told => keys.Contains(told.Key), cancellationToken))
            return false;
        context.ToldOccasions.AddRange(occasions);
        await Outbox.QueueAsync(context, notices, cancellationToken);
        await context.SaveChangesAsync(cancellationToken);
        await transaction.CommitAsync(cancellationToken);
        return true;
    }

    public async Task StillSoAsync(IReadOnlyList<Guid> toldIds, Instant now, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await context.ToldOccasions.Where(told => toldIds.Contains(told.Id))
            .ExecuteUpdateAsync(row => row.SetProperty(told => told.LastSeenAt, now), cancellationToken);
    }

    public async Task<IReadOnlySet<OccasionKind>> MutedAsync(CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return (await context.MutedKinds.Select(muted => muted.Kind).ToListAsync(cancellationToken)).ToHashSet();
    }

    public async Task MuteAsync(OccasionKind kind, bool muted, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        await context.MutedKinds.Where(row => row.Kind == kind).ExecuteDeleteAsync(cancellationToken);
        if (muted)
            context.MutedKinds.Add(new MutedKind { Kind = kind });
        await context.SaveChangesAsync(cancellationToken);
        await transaction.CommitAsync(cancellationToken);
    }
}
