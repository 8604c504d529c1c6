using FermentWatch.Kitchen.Places;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Households;

/// <summary>Places offered to a household that has made none, so that the first jar needs nothing made before.</summary>
public sealed class ReadyPlaces(IPlaceBook places, TimeProvider clock)
{
    private static readonly (string Name, TypicalTemperature Typical)[] Offered =
    [
        ("kitchen counter", TypicalTemperature.Usual),
        ("cellar", TypicalTemperature.Cellar),
        ("refrigerator", TypicalTemperature.ColdStore),
    ];

    /// <summary>The household's places, or those offered, not yet stored.</summary>
    public async Task<IReadOnlyList<Place>> OfferAsync(CancellationToken cancellationToken)
    {
        IReadOnlyList<Place> made = await places.AllAsync(cancellationToken);
        return made.Count > 0 ? made : Make();
    }

    /// <summary>The household's places; if it has none, those offered are stored first.</summary>
    public async Task<IReadOnlyList<Place>> MakeAsync(CancellationToken cancellationToken)
    {
        IReadOnlyList<Place> made = await places.AllAsync(cancellationToken);
        if (made.Count > 0)
            return made;
        await places.AddFirstAsync(Make(), cancellationToken);
        return await places.AllAsync(cancellationToken);
    }

    private Place[] Make()
    {
        Instant now = clock.GetUtcNow().ToInstant();
        return [.. Offered.Select((offer, index) => new Place
        {
            Id = Guid.CreateVersion7(now.ToDateTimeOffset()), Name = offer.Name, ShelfOrder = index + 1, Typical = offer.Typical,
        })];
    }
}
