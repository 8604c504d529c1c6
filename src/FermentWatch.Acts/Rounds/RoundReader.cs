using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Rounds;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Rounds;

/// <summary>Reads today's round for the pages and the API.</summary>
public sealed class RoundReader(RoundPass rounds, IHouseholdBook households, TimeProvider clock)
{
    /// <summary>What is to be looked at today, as things stand.</summary>
    public async Task<RoundView> TodayAsync(CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        Instant now = clock.GetUtcNow().ToInstant();
        RoundSheet sheet = await rounds.SheetAsync(household, now.InZone(household.Zone).Date, cancellationToken);
        return new RoundView(sheet, household, now);
    }
}

/// <summary>Today's round as the pages show it.</summary>
/// <param name="Sheet">What is to be looked at.</param>
/// <param name="Household">For its zone and hours.</param>
/// <param name="Now">The present.</param>
public sealed record RoundView(RoundSheet Sheet, Household Household, Instant Now)
{
    private static readonly LookFor[] ThroughTheGlass =
        [LookFor.BrineOverSolids, LookFor.LeafUnder, LookFor.NothingUp, LookFor.Bubbles, LookFor.TrayUnder, LookFor.WaterInRim,
            LookFor.BrineDriesFast];

    public int Waiting => Sheet.Jars.Count(each => !each.LookedAtToday);

    /// <summary>What is looked for on a shelf, seen without opening.</summary>
    public static IEnumerable<string> LookFors(RoundShelf shelf) =>
        ThroughTheGlass.Where(lookFor => shelf.Jars.Any(each => each.LookFors.Contains(lookFor))).Select(LookForWords.Of);

    /// <summary>What a jar asks for beyond a look, in a few words.</summary>
    public static string Beyond(RoundJar jar) => string.Join(", ", jar.LookFors.Select(LookForWords.InBrief).OfType<string>());
}
