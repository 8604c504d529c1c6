using FermentWatch.Kitchen.Households;

namespace FermentWatch.Kitchen.Feeds;

/// <summary>What a person's calendar shows.</summary>
/// <param name="Household">The household.</param>
/// <param name="Tastes">The next tasting of each jar, by number.</param>
/// <param name="Rounds">The rounds of the coming days that fall to this person, by date.</param>
public sealed record ComingDays(Household Household, IReadOnlyList<ComingTaste> Tastes, IReadOnlyList<ComingRound> Rounds);
