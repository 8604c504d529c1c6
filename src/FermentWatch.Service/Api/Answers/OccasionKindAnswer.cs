using FermentWatch.Kitchen.Occasions;

namespace FermentWatch.Service.Api.Answers;

/// <summary>A kind of occasion.</summary>
/// <param name="Kind">Its name.</param>
/// <param name="Words">What people call it.</param>
/// <param name="Muted">Whether this household is not told of it.</param>
public sealed record OccasionKindAnswer(OccasionKind Kind, string Words, bool Muted);
