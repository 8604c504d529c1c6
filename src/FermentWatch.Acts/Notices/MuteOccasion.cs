using FermentWatch.Kitchen.Occasions;

namespace FermentWatch.Acts.Notices;

/// <summary>Has the household told no more of a kind of occasion, or told of it again.</summary>
public sealed class MuteOccasion(IOccasionBook occasions)
{
    public Task DoAsync(OccasionKind kind, bool muted, CancellationToken cancellationToken) => occasions.MuteAsync(kind, muted, cancellationToken);
}
