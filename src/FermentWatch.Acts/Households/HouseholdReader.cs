using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Places;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Households;

/// <summary>Reads the household, the time on its clock and its places.</summary>
public sealed class HouseholdReader(IHouseholdBook households, IPlaceBook places, TimeProvider clock)
{
    /// <summary>The household, now.</summary>
    public async Task<Present> NowAsync(CancellationToken cancellationToken) =>
        new(await households.ReadAsync(cancellationToken), clock.GetUtcNow().ToInstant());

    /// <summary>Every place, in shelf order.</summary>
    public Task<IReadOnlyList<Place>> PlacesAsync(CancellationToken cancellationToken) => places.AllAsync(cancellationToken);
}

/// <summary>The household at an instant.</summary>
/// <param name="Household">Its name, zone, units and hours.</param>
/// <param name="Now">The instant.</param>
public sealed record Present(Household Household, Instant Now)
{
    /// <summary>The date on the household's clock.</summary>
    public LocalDate Today => Now.InZone(Household.Zone).Date;
}
