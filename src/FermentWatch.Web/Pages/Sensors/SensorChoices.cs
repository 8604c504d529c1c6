using FermentWatch.Acts.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Web.Pages.Shared;

namespace FermentWatch.Web.Pages.Sensors;

/// <summary>What a sensor can be given to.</summary>
/// <param name="Places">The places of the household.</param>
/// <param name="Jars">The jars that are kept.</param>
public sealed record SensorChoices(IReadOnlyList<Choice> Places, IReadOnlyList<Choice> Jars)
{
    public static SensorChoices None { get; } = new([], []);

    public IReadOnlyList<Choice> PlacesAndJars => [.. Places, .. Jars];

    public IReadOnlyList<Choice> All => [.. PlacesAndJars, new("nowhere", "nothing, put away")];

    public static async Task<SensorChoices> ReadAsync(ReadyPlaces places, IJarBook jars, CancellationToken cancellationToken) => new(
        [.. (await places.OfferAsync(cancellationToken)).Select(place => new Choice($"place {place.Name}", place.Name))],
        [.. (await jars.KeptAsync(cancellationToken)).Select(jar => new Choice($"jar {jar.Number}", $"in jar {jar.Number}, {jar.Name}"))]);
}
