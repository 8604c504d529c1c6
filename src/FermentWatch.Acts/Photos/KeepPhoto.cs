using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Observations;

namespace FermentWatch.Acts.Photos;

/// <summary>Keeps a picture of what was seen.</summary>
[OpenToChildren, OpenToRecorders]
public sealed class KeepPhoto(IPhotoBook photos)
{
    /// <summary>Keeps it; one that is there already is replaced by its own sender, and by an adult.</summary>
    /// <param name="observation">What it shows.</param>
    /// <param name="jpeg">A small JPEG that says nothing of where or by what it was taken.</param>
    /// <param name="by">Who sends it.</param>
    /// <param name="mayReplaceAny">Whether this person may put it in the place of somebody else's.</param>
    /// <param name="cancellationToken">Gives up before anything is kept.</param>
    /// <returns>Why it was not kept, null where it was; and whether there is such an observation.</returns>
    public async Task<(Refusal? Refusal, bool IsThere)> DoAsync(Guid observation, byte[] jpeg, Person by, bool mayReplaceAny,
        CancellationToken cancellationToken)
    {
        var photo = new Photo { ObservationId = observation, Jpeg = jpeg, By = by.Name, ById = by.AccountId };
        return await photos.KeepAsync(photo, mayReplaceAny, cancellationToken) switch
        {
            PhotoKept.Kept => (null, true),
            PhotoKept.SomebodyElses => (new Refusal("photo", "a photo in the place of somebody else's", "ask an adult to replace it"), true),
            _ => (null, false),
        };
    }
}
