using System.Globalization;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Service.Pages.Entering;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Service.Pages.Sensors;

/// <summary>Where it is said what a sensor measures.</summary>
public sealed class SensorDesk(ISensorBook sensors, IPlaceBook places, IJarBook jars, ForecastRenewal renewal, TimeProvider clock)
{
    /// <summary>Gives a sensor to a place or a jar from now on, and renews the forecasts; what was wrong, or nothing.</summary>
    /// <param name="sensor">The sensor.</param>
    /// <param name="where"><c>place NAME</c>, <c>jar NUMBER</c> or <c>nowhere</c>.</param>
    /// <param name="cancellationToken">Ends the work.</param>
    public async Task<IReadOnlyList<Refusal>> GiveAsync(Sensor sensor, string? where, CancellationToken cancellationToken)
    {
        string typed = (where ?? "").Trim();
        Guid? placeId = null, jarId = null;
        if (typed.StartsWith("place ", StringComparison.OrdinalIgnoreCase))
            placeId = (await places.AllAsync(cancellationToken)).FirstOrDefault(place => place.Name.Equals(typed[6..].Trim(), StringComparison.OrdinalIgnoreCase))?.Id;
        else if (typed.StartsWith("jar ", StringComparison.OrdinalIgnoreCase) && int.TryParse(typed[4..], NumberStyles.None, CultureInfo.InvariantCulture, out int number))
            jarId = (await jars.KeptAsync(cancellationToken)).FirstOrDefault(jar => jar.Number == number)?.Id;
        if (placeId is null && jarId is null && typed != "nowhere")
            return [new Refusal("where", typed.Length == 0 ? "nothing" : typed, "a place of this household, a jar that is kept, or nowhere would be right")];
        Instant now = clock.GetUtcNow().ToInstant();
        var placement = new SensorPlacement { Id = Guid.CreateVersion7(now.ToDateTimeOffset()), SensorId = sensor.Id, PlaceId = placeId, JarId = jarId, From = now };
        await sensors.PlaceAsync(placement, cancellationToken);
        await renewal.RunAsync();
        return [];
    }
}
