using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>One jar of a round.</summary>
/// <param name="Jar">The jar.</param>
/// <param name="Day">Days after packing, 0 on the date of packing.</param>
/// <param name="LookFors">What to look for and do, in order.</param>
/// <param name="Opening">Whether it has to be opened.</param>
/// <param name="Trouble">The trouble for which it is on the closer watch; null if it is not.</param>
/// <param name="DaysNotLookedAt">Whole dates before this one on which nobody answered for it.</param>
/// <param name="LookedAtToday">Whether somebody has answered for it on this date.</param>
public sealed record RoundJar(
    Jar Jar, int Day, IReadOnlyList<LookFor> LookFors, bool Opening, Sighting? Trouble, int DaysNotLookedAt, bool LookedAtToday);
