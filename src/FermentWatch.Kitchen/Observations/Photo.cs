namespace FermentWatch.Kitchen.Observations;

/// <summary>A picture kept with what was seen.</summary>
public sealed class Photo
{
    /// <summary>What it shows.</summary>
    public required Guid ObservationId { get; init; }

    /// <summary>A small JPEG that says nothing of where or by what it was taken.</summary>
    public required byte[] Jpeg { get; init; }

    /// <summary>Who sent it; null where that is from before it was noted.</summary>
    public string? By { get; init; }

    /// <summary>The account of whoever sent it; null where it was not noted.</summary>
    public Guid? ById { get; init; }
}

/// <summary>Pictures of what was seen, one for each observation.</summary>
public interface IPhotoBook
{
    /// <summary>Keeps a picture; one that was there before is replaced, and stays where the new one cannot be written.</summary>
    /// <param name="photo">The picture.</param>
    /// <param name="mayReplaceAny">Whether it may take the place of one that somebody else sent.</param>
    /// <param name="cancellationToken">Gives up before anything is changed.</param>
    Task<PhotoKept> KeepAsync(Photo photo, bool mayReplaceAny, CancellationToken cancellationToken);

    /// <summary>The picture of an observation, or null.</summary>
    Task<Photo?> FindAsync(Guid observationId, CancellationToken cancellationToken);

    /// <summary>The newest picture of each jar that has one, as the observation that it shows; nothing that was taken back.</summary>
    Task<IReadOnlyDictionary<Guid, Guid>> NewestAsync(CancellationToken cancellationToken);

    /// <summary>Which of these observations have a picture.</summary>
    Task<IReadOnlySet<Guid>> KeptAsync(IReadOnlyCollection<Guid> observationIds, CancellationToken cancellationToken);
}

/// <summary>What became of a picture.</summary>
public enum PhotoKept
{
    Kept = 1,

    /// <summary>There is no such observation.</summary>
    NothingSeen = 2,

    /// <summary>Somebody else's is there, which this person may not replace.</summary>
    SomebodyElses = 3,
}
