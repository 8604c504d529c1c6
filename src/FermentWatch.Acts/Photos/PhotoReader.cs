using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;

namespace FermentWatch.Acts.Photos;

/// <summary>Reads pictures, and which there are.</summary>
public sealed class PhotoReader(IPhotoBook photos)
{
    /// <summary>The picture of an observation, or null.</summary>
    public Task<Photo?> FindAsync(Guid observation, CancellationToken cancellationToken) => photos.FindAsync(observation, cancellationToken);

    /// <summary>The newest picture of each jar that has one, as the observation that it shows.</summary>
    public Task<IReadOnlyDictionary<Guid, Guid>> NewestAsync(CancellationToken cancellationToken) => photos.NewestAsync(cancellationToken);

    /// <summary>Which entries of a jar have a picture.</summary>
    public Task<IReadOnlySet<Guid>> OfJarAsync(Jar jar, CancellationToken cancellationToken) =>
        photos.KeptAsync([.. jar.Observations.Select(each => each.Id)], cancellationToken);
}
