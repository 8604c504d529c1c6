using System.Globalization;
using FermentWatch.Acts.Households;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Sensors;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Sensors;

/// <summary>Where it is said what a sensor measures.</summary>
public sealed class GiveSensor(ISensorBook sensors, ReadyPlaces places, IJarBook jars, WrittenDown written, TimeProvider clock)
{
    private const string PlaceWord = "place ", JarWord = "jar ";

    /// <summary>The word for a sensor that is put away.</summary>
    public const string Nowhere = "nowhere";

    /// <summary>What a sensor can be given to: the places, or those offered to a household that has none, and the jars that are kept.</summary>
    public async Task<(IReadOnlyList<Place> Places, IReadOnlyList<Jar> Jars)> ChoicesAsync(CancellationToken cancellationToken) =>
        (await places.OfferAsync(cancellationToken), await jars.KeptAsync(cancellationToken));

    /// <summary>What a sensor measures at present, in the words in which it is said.</summary>
    public async Task<string> WhereAsync(Sensor sensor, CancellationToken cancellationToken)
    {
        SensorPlacement? stands = sensor.PlacementAt(clock.GetUtcNow().ToInstant());
        (IReadOnlyList<Place> known, IReadOnlyList<Jar> kept) = await ChoicesAsync(cancellationToken);
        return known.FirstOrDefault(place => place.Id == stands?.PlaceId) is { } place ? WordOf(place)
            : kept.FirstOrDefault(jar => jar.Id == stands?.JarId) is { } jar ? WordOf(jar) : Nowhere;
    }

    /// <summary>How a place is named where it is said what a sensor measures.</summary>
    public static string WordOf(Place place) => PlaceWord + place.Name;

    /// <summary>How a jar is named there.</summary>
    public static string WordOf(Jar jar) => string.Create(CultureInfo.InvariantCulture, $"{JarWord}{jar.Number}");

    /// <summary>Gives a sensor to a place or a jar from now on, and renews the forecasts; what was wrong, or nothing.</summary>
    /// <param name="sensor">The sensor.</param>
    /// <param name="where"><c>place NAME</c>, <c>jar NUMBER</c> or <c>nowhere</c>.</param>
    /// <param name="cancellationToken">Ends the work.</param>
    public async Task<IReadOnlyList<Refusal>> GiveAsync(Sensor sensor, string? where, CancellationToken cancellationToken)
    {
        (SensorPlacement? placement, IReadOnlyList<Refusal> refusals) = await ReadWhereAsync(where, cancellationToken);
        if (placement is not null)
            await GiveAsync(sensor, placement, cancellationToken);
        return refusals;
    }

    /// <summary>Gives a sensor to what was read before, and renews the forecasts.</summary>
    public async Task GiveAsync(Sensor sensor, SensorPlacement placement, CancellationToken cancellationToken)
    {
        await sensors.PlaceAsync(
            new SensorPlacement { Id = placement.Id, SensorId = sensor.Id, PlaceId = placement.PlaceId, JarId = placement.JarId,
                From = placement.From }, cancellationToken);
        written.SayFacts();
    }

    /// <summary>Reads where a sensor measures from now on, for a sensor yet to be named; null with what was wrong.</summary>
    /// <param name="where"><c>place NAME</c>, <c>jar NUMBER</c> or <c>nowhere</c>.</param>
    /// <param name="cancellationToken">Ends the work.</param>
    public async Task<(SensorPlacement? Placement, IReadOnlyList<Refusal> Refusals)> ReadWhereAsync(string? where,
        CancellationToken cancellationToken)
    {
        string typed = (where ?? "").Trim();
        Guid? placeId = null, jarId = null;
        if (typed.StartsWith(PlaceWord, StringComparison.OrdinalIgnoreCase))
        {
            string name = typed[PlaceWord.Length..].Trim();
            placeId = (await places.MakeAsync(cancellationToken)).FirstOrDefault(place =>
                place.Name.Equals(name, StringComparison.OrdinalIgnoreCase))?.Id;
        }
        else if (typed.StartsWith(JarWord, StringComparison.OrdinalIgnoreCase)
            && int.TryParse(typed[JarWord.Length..], NumberStyles.None, CultureInfo.InvariantCulture, out int number))
            jarId = (await jars.KeptAsync(cancellationToken)).FirstOrDefault(jar => jar.Number == number)?.Id;
        if (placeId is null && jarId is null && typed != Nowhere)
            return (null, [new Refusal("where", typed.Length == 0 ? "nothing" : typed,
                "a place of this household, a jar that is kept, or nowhere would be right")]);
        Instant now = clock.GetUtcNow().ToInstant();
        return (new SensorPlacement { Id = Guid.CreateVersion7(now.ToDateTimeOffset()), SensorId = Guid.Empty, PlaceId = placeId, JarId = jarId,
            From = now }, []);
    }
}
