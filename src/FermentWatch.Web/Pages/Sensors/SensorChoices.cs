using FermentWatch.Acts.Sensors;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Web.Pages.Shared;

namespace FermentWatch.Web.Pages.Sensors;

/// <summary>What a sensor can be given to.</summary>
/// <param name="Places">The places of the household.</param>
/// <param name="Jars">The jars that are kept.</param>
public sealed record SensorChoices(IReadOnlyList<Choice> Places, IReadOnlyList<Choice> Jars)
{
    public static SensorChoices None { get; } = new([], []);

    public IReadOnlyList<Choice> PlacesAndJars => [.. Places, .. Jars];

    public IReadOnlyList<Choice> All => [.. PlacesAndJars, new(GiveSensor.Nowhere, "nothing, put away")];

    public static async Task<SensorChoices> ReadAsync(GiveSensor desk, CancellationToken cancellationToken)
    {
        (IReadOnlyList<Place> places, IReadOnlyList<Jar> jars) = await desk.ChoicesAsync(cancellationToken);
        return new([.. places.Select(place => new Choice(GiveSensor.WordOf(place), place.Name))],
            [.. jars.Select(jar => new Choice(GiveSensor.WordOf(jar), $"in jar {jar.Number}, {jar.Name}"))]);
    }
}
