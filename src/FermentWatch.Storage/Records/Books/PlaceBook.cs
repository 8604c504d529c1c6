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
