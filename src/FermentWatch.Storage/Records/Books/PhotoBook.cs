using FermentWatch.Kitchen.Observations;
using Microsoft.EntityFrameworkCore;

namespace FermentWatch.Storage.Records.Books;

/// <inheritdoc cref="IPhotoBook"/>
internal sealed class PhotoBook(IDbContextFactory<RecordsContext> contexts) : IPhotoBook
{
    public async Task<bool> KeepAsync(Photo photo, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        if (!await context.Observations.AnyAsync(each => each.Id == photo.ObservationId, cancellationToken))
            return false;
        await context.Photos.Where(each => each.ObservationId == photo.ObservationId).ExecuteDeleteAsync(cancellationToken);
        context.Photos.Add(photo);
        await context.SaveChangesAsync(cancellationToken);
        return true;
    }

    public async Task<Photo?> FindAsync(Guid observationId, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.Photos.AsNoTracking().FirstOrDefaultAsync(each => each.ObservationId == observationId, cancellationToken);
    }

    public async Task<IReadOnlySet<Guid>> KeptAsync(IReadOnlyCollection<Guid> observationIds, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return (await context.Photos.Where(each => observationIds.Contains(each.ObservationId)).Select(each => each.ObservationId).ToListAsync(cancellationToken)).ToHashSet();
    }
}
