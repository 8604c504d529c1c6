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
