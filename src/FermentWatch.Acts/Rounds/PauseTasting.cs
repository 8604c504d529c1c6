using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Households;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Rounds;

/// <summary>Not tasting this week, or again from today on.</summary>
public sealed class PauseTasting(IHouseholdBook households, WrittenDown written, TimeProvider clock)
{
    private const int Days = 7;

    public async Task DoAsync(bool paused, CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        household.TastingAgainFrom = paused ? clock.GetUtcNow().ToInstant().InZone(household.Zone).Date.PlusDays(Days) : null;
        await households.WriteAsync(household, cancellationToken);
        written.SayFacts();
    }
}
