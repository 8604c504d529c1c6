namespace FermentWatch.Kitchen.Observations;

/// <summary>Pictures of what was seen, one for each observation.</summary>
public interface IPhotoBook
{
    /// <summary>Keeps a picture; one that was there before is replaced.</summary>
    /// <returns>False where there is no such observation.</returns>
    Task<bool> KeepAsync(Photo photo, CancellationToken cancellationToken);

    /// <summary>The picture of an observation, or null.</summary>
    Task<Photo?> FindAsync(Guid observationId, CancellationToken cancellationToken);

    /// <summary>Which of these observations have a picture.</summary>
    Task<IReadOnlySet<Guid>> KeptAsync(IReadOnlyCollection<Guid> observationIds, CancellationToken cancellationToken);
}
