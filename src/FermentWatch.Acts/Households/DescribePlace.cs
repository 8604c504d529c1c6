using System.Globalization;
using System.Text.Json.Serialization;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Typed;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Households;

/// <summary>Adds a place or changes one; forecasts of what stands there follow.</summary>
public sealed class DescribePlace(IPlaceBook places, WrittenDown written, TimeProvider clock)
{
    /// <summary>Adds a place, or changes one; what was wrong, or nothing.</summary>
    public async Task<IReadOnlyList<Refusal>> DoAsync(PlaceInput input, CancellationToken cancellationToken)
    {
        IReadOnlyList<Place> known = await places.AllAsync(cancellationToken);
        Place? old = known.FirstOrDefault(place => place.Id.ToString() == input.Id);
        if (old is not null && Shown.Check("place", input.Shown, FactsOf(old)) is { } older)
            return [older];
        var reader = new FieldReader();
        string name = reader.ReadName("place name", input.Name);
        if (known.Any(place => place.Id != old?.Id && place.Name.Equals(name, StringComparison.OrdinalIgnoreCase)))
            reader.Refuse("place name", name, "a name no other place has would be right");
        TypicalTemperature typical = reader.ReadChoice("typical temperature", input.Typical, old?.Typical ?? TypicalTemperature.Usual);
        int order = reader.ReadWhole("shelf order", input.ShelfOrder,
            old?.ShelfOrder ?? known.Select(place => place.ShelfOrder).DefaultIfEmpty().Max() + 1, 0, 1000);
        if (reader.Refusals.Count > 0)
            return reader.Refusals;
        Instant now = clock.GetUtcNow().ToInstant();
        var place = new Place { Id = old?.Id ?? Guid.CreateVersion7(now.ToDateTimeOffset()), Name = name, Typical = typical, ShelfOrder = order };
        await (old is null ? places.AddAsync(place, cancellationToken) : places.ChangeAsync(place, cancellationToken));
        written.SayFacts();
        return [];
    }

    /// <summary>What a form about it shows.</summary>
    public static IEnumerable<(string Field, string Value)> FactsOf(Place place) =>
        [("name", place.Name), ("temperature", place.Typical.Words()), ("shelf order", place.ShelfOrder.ToString(CultureInfo.InvariantCulture))];
}

/// <summary>A place, as typed.</summary>
public sealed class PlaceInput
{
    /// <summary>The place that is changed; empty for a new one.</summary>
    public string? Id { get; set; }

    public string? Name { get; set; }

    /// <summary>Name of a <see cref="Kitchen.Places.TypicalTemperature"/>.</summary>
    public string? Typical { get; set; }

    /// <summary>Order in which the round passes it; empty puts it last.</summary>
    public string? ShelfOrder { get; set; }

    /// <summary>What the form showed when it was opened, by <see cref="Kitchen.Typed.Shown"/>; left out by scripts.</summary>
    [JsonIgnore]
    public string? Shown { get; set; }
}
