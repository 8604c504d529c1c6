using FermentWatch.Kitchen.Places;
using Microsoft.EntityFrameworkCore;

namespace FermentWatch.Storage.Records.Books;

/// <inheritdoc cref="IPlaceBook"/>
internal sealed class PlaceBook(IDbContextFactory<RecordsContext> contexts) : IPlaceBook
{
    public async Task<IReadOnlyList<Place>> AllAsync(CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.Places.AsNoTracking()
            .OrderBy(place => place.ShelfOrder).ThenBy(place => place.Name).ToListAsync(cancellationToken);
    }

    public async Task AddFirstAsync(IReadOnlyList<Place> first, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        if (await context.Places.AnyAsync(cancellationToken))
            return;
        context.Places.AddRange(first);
        await context.SaveChangesAsync(cancellationToken);
        await transaction.CommitAsync(cancellationToken);
    }

    /// <exception cref="NameTakenException">Another place has the name.</exception>
    public async Task AddAsync(Place place, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        context.Places.Add(place);
        await context.SaveNamedAsync("place", place.Name, cancellationToken);
    }

    /// <exception cref="NameTakenException">Another place has the name.</exception>
    public async Task ChangeAsync(Place place, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        context.Places.Update(place);
        await context.SaveNamedAsync("place", place.Name, cancellationToken);
    }
}
