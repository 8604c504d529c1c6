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
}
