using FermentWatch.Kitchen.Households;
using Microsoft.EntityFrameworkCore;

namespace FermentWatch.Storage.Records.Books;

/// <inheritdoc cref="IHouseholdBook"/>
internal sealed class HouseholdBook(IDbContextFactory<RecordsContext> contexts) : IHouseholdBook
{
    public async Task<Household> ReadAsync(CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.Households.AsNoTracking().SingleAsync(cancellationToken);
    }

    public async Task WriteAsync(Household household, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        context.Households.Update(household);
        await context.SaveChangesAsync(cancellationToken);
    }

    public async Task<long> RevisionAsync(CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.FactsRevisions.Select(row => row.Facts).SingleAsync(cancellationToken);
    }
}
