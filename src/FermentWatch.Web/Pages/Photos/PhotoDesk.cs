using FermentWatch.Acts.Photos;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Members;

namespace FermentWatch.Web.Pages.Photos;

/// <summary>Where pictures of what was seen are made small, one at a time, so that many at once take the memory of one.</summary>
public sealed class PhotoDesk(KeepPhoto keep) : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private readonly SemaphoreSlim _turn = new(1);

    /// <summary>Keeps a picture.</summary>
    /// <param name="observation">What it shows.</param>
    /// <param name="photo">The file, which waits on the disk until it is its turn.</param>
    /// <param name="by">Who sends it.</param>
    /// <param name="mayReplaceAny">Whether this person may put it in the place of somebody else's.</param>
    /// <param name="cancellationToken">Gives up before anything is kept.</param>
    /// <returns>Why it was not kept, null where it was; and whether there is such an observation.</returns>
    public async Task<(Refusal? Refusal, bool IsThere)> KeepAsync(Guid observation, IFormFile photo, Person by, bool mayReplaceAny,
        CancellationToken cancellationToken)
    {
        if (!await _turn.WaitAsync(Patience, cancellationToken))
            return (new Refusal("photo", "one photo too many at a time", "sending it again in a minute would be right"), true);
        byte[]? jpeg;
        try
        {
            using Stream file = photo.OpenReadStream();
            (jpeg, Refusal? refusal) = SmallPhoto.Of(file);
            if (jpeg is null)
                return (refusal, true);
        }
        finally
        {
            _turn.Release();
        }
        return await keep.DoAsync(observation, jpeg, by, mayReplaceAny, cancellationToken);
    }

    public void Dispose() => _turn.Dispose();
}
