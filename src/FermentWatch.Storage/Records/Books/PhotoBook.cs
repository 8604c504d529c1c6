using FermentWatch.Kitchen.Observations;
using Microsoft.EntityFrameworkCore;

namespace FermentWatch.Storage.Records.Books;

/// <inheritdoc cref="IPhotoBook"/>
internal sealed class PhotoBook(IDbContextFactory<RecordsContext> contexts) : IPhotoBook
{
    public async Task<PhotoKept> KeepAsync(Photo photo, bool mayReplaceAny, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        if (!await context.Observations.AnyAsync(each => each.Id == photo.ObservationId, cancellationToken))
            return PhotoKept.NothingSeen;
        IQueryable<Photo> before = context.Photos.Where(each => each.ObservationId == photo.ObservationId);
        if (!mayReplaceAny && await before.AnyAsync(each => each.ById == null || each.ById != photo.ById, cancellationToken))
            return PhotoKept.SomebodyElses;
        await before.ExecuteDeleteAsync(cancellationToken);
        context.Photos.Add(photo);
        await context.SaveChangesAsync(cancellationToken);
        await transaction.CommitAsync(cancellationToken);
        return PhotoKept.Kept;
    }

    public async Task<Photo?> FindAsync(Guid observationId, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.Photos.AsNoTracking().FirstOrDefaultAsync(each => each.ObservationId == observationId, cancellationToken);
    }

    public async Task<IReadOnlyDictionary<Guid, Guid>> NewestAsync(CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var shown = await context.Photos.Join(context.Observations.Where(each => each.VoidedAt == null), photo => photo.ObservationId, each =>
            each.Id,
            (_, each) => new { each.JarId, each.At, each.Id }).ToListAsync(cancellationToken);
        return shown.GroupBy(each => each.JarId).ToDictionary(jar => jar.Key, jar => jar.MaxBy(each => (each.At, each.Id))!.Id);
    }

    public async Task<IReadOnlySet<Guid>> KeptAsync(IReadOnlyCollection<Guid> observationIds, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return (await context.Photos.Where(each => observationIds.Contains(each.ObservationId)).Select(each =>
            each.ObservationId).ToListAsync(cancellationToken)).ToHashSet();
    }
}
