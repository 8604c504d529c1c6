using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Rounds;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace FermentWatch.Storage.Records.Books;

/// <inheritdoc cref="IRoundBook"/>
internal sealed class RoundBook(IDbContextFactory<RecordsContext> contexts) : IRoundBook
{
    public async Task<Round?> LastAsync(CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.Rounds.AsNoTracking().OrderByDescending(round => round.Date).FirstOrDefaultAsync(cancellationToken);
    }

    public async Task<IReadOnlyList<Round>> SinceAsync(LocalDate date, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.Rounds.AsNoTracking()
            .Where(round => round.Date >= date).OrderBy(round => round.Date).ToListAsync(cancellationToken);
    }

    public async Task<bool> OpenAsync(Round round, IReadOnlyList<Notice> notices, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        if (await context.Rounds.AnyAsync(each => each.Date == round.Date, cancellationToken))
            return false;
        context.Rounds.Add(round);
        await Outbox.QueueAsync(context, notices, cancellationToken);
        await context.SaveChangesAsync(cancellationToken);
        await transaction.CommitAsync(cancellationToken);
        return true;
    }

    public async Task TakeBackAfterAsync(Instant now, CancellationToken cancellationToken)
    {
        // A person's quiet hours put a notice off by less than that.
        Instant ahead = now + Duration.FromDays(1);
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        await context.Rounds.Where(round => round.OpenedAt > now).ExecuteDeleteAsync(cancellationToken);
        await context.ToldOccasions.Where(told => told.ToldAt > ahead).ExecuteDeleteAsync(cancellationToken);
        await context.Notices.Where(notice => notice.State == NoticeState.Queued && notice.DueAt > ahead).ExecuteDeleteAsync(cancellationToken);
        await context.Notices.Where(notice => notice.State == NoticeState.Queued && notice.NextAttemptAt > ahead)
            .ExecuteUpdateAsync(row => row.SetProperty(notice => notice.NextAttemptAt, now), cancellationToken);
        await transaction.CommitAsync(cancellationToken);
    }
}
