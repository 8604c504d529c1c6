using FermentWatch.Kitchen.Notices;
using Microsoft.EntityFrameworkCore;

namespace FermentWatch.Storage.Records.Books;

/// <inheritdoc cref="IPushKeyBook"/>
internal sealed class PushKeyBook(IDbContextFactory<RecordsContext> contexts) : IPushKeyBook
{
    public async Task<PushKeyPair?> FindAsync(CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await FindAsync(context, cancellationToken);
    }

    public async Task<PushKeyPair> KeepAsync(PushKeyPair made, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        // The transaction takes the write lock before it reads: who comes second finds the pair of who came first.
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        if (await FindAsync(context, cancellationToken) is { } kept)
            return kept;
        context.Add(made);
        await context.SaveChangesAsync(cancellationToken);
        await transaction.CommitAsync(cancellationToken);
        return made;
    }

    private static Task<PushKeyPair?> FindAsync(RecordsContext context, CancellationToken cancellationToken) =>
        context.Set<PushKeyPair>().AsNoTracking().SingleOrDefaultAsync(cancellationToken);
}
