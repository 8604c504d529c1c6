using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Typed;
using NodaTime;
using NodaTime.Extensions;
using NodaTime.Text;

namespace FermentWatch.Acts.Households;

/// <summary>Where the household and its places are written down.</summary>
public sealed class HomeDesk(IHouseholdBook households, IPlaceBook places, WrittenDown written, TimeProvider clock)
{
    /// <summary>Writes what holds for the household; what was wrong, or nothing.</summary>
    public async Task<IReadOnlyList<Refusal>> WriteAsync(HouseholdInput input, CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        var reader = new FieldReader();
        household.Name = reader.ReadName("name", input.Name);
        household.TimeZoneId = ReadZone(input.TimeZone, reader);
        household.TemperatureUnit = reader.ReadChoice("temperature unit", input.TemperatureUnit, household.TemperatureUnit);
        household.MassUnit = reader.ReadChoice("mass unit", input.MassUnit, household.MassUnit);
        household.Mould = reader.ReadChoice("mould", input.Mould, household.Mould);
        household.PhTool = reader.ReadChoice("pH", input.PhTool, household.PhTool);
        household.RoundAt = ReadTime("morning round", input.RoundAt, household.RoundAt, reader);
        household.EveningAt = ReadTime("evening", input.EveningAt, household.EveningAt, reader);
        if (household.EveningAt <= household.RoundAt)
            reader.Refuse("evening", input.EveningAt, "a time after the morning round would be right");
        if (reader.Refusals.Count == 0)
            await households.WriteAsync(household, cancellationToken);
        return reader.Refusals;
    }

    /// <summary>Adds a place, or changes one; what was wrong, or nothing.</summary>
    public async Task<IReadOnlyList<Refusal>> WriteAsync(PlaceInput input, CancellationToken cancellationToken)
    {
        IReadOnlyList<Place> known = await places.AllAsync(cancellationToken);
        Place? old = known.FirstOrDefault(place => place.Id.ToString() == input.Id);
        var reader = new FieldReader();
        string name = reader.ReadName("place name", input.Name);
        if (known.Any(place => place.Id != old?.Id && place.Name.Equals(name, StringComparison.OrdinalIgnoreCase)))
            reader.Refuse("place name", name, "a name no other place has would be right");
        TypicalTemperature typical = reader.ReadChoice("typical temperature", input.Typical, old?.Typical ?? TypicalTemperature.Usual);
        int order = reader.ReadWhole("shelf order", input.ShelfOrder, old?.ShelfOrder ?? known.Select(place => place.ShelfOrder).DefaultIfEmpty().Max() + 1, 0, 1000);
        if (reader.Refusals.Count > 0)
            return reader.Refusals;
        Instant now = clock.GetUtcNow().ToInstant();
        var place = new Place { Id = old?.Id ?? Guid.CreateVersion7(now.ToDateTimeOffset()), Name = name, Typical = typical, ShelfOrder = order };
        await (old is null ? places.AddAsync(place, cancellationToken) : places.ChangeAsync(place, cancellationToken));
        written.SayFacts();
        return [];
    }

    private static string ReadZone(string? typed, FieldReader reader)
    {
        string zone = (typed ?? "").Trim();
        if (DateTimeZoneProviders.Tzdb.GetZoneOrNull(zone) is null)
            reader.Refuse("time zone", typed, "a name of the tz database would be right, such as Europe/Vienna");
        return zone;
    }

    private static LocalTime ReadTime(string field, string? typed, LocalTime ifEmpty, FieldReader reader)
    {
        if (string.IsNullOrWhiteSpace(typed))
            return ifEmpty;
        string time = typed.Trim();
        if (LocalTimePattern.CreateWithInvariantCulture("HH:mm").Parse(time.Length > 5 ? time[..5] : time) is { Success: true, Value: var read })
            return read;
        reader.Refuse(field, typed, "a time of day would be right, such as 07:00");
        return ifEmpty;
    }
}
