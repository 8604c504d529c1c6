using FermentWatch.Kitchen.Occasions;

namespace FermentWatch.Storage.Records;

/// <summary>A kind of occasion this household is not told of.</summary>
internal sealed class MutedKind
{
    public required OccasionKind Kind { get; init; }
}
