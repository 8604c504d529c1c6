using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Service.Pages.Sensors;

/// <summary>Reads sensors for the pages and the API.</summary>
public sealed class SensorReader(ISensorBook sensors, IPlaceBook places, IJarBook jars, IReadingLog log, TimeProvider clock)
{
    /// <summary>Every sensor in service, by name.</summary>
    public async Task<IReadOnlyList<SensorView>> InServiceAsync(CancellationToken cancellationToken)
    {
        var known = (await places.AllAsync(cancellationToken)).ToDictionary(place => place.Id);
        var kept = (await jars.KeptAsync(cancellationToken)).ToDictionary(jar => jar.Id);
        Instant now = clock.GetUtcNow().ToInstant();
        var views = new List<SensorView>();
        foreach (Sensor sensor in (await sensors.AllAsync(cancellationToken)).Where(sensor => sensor.RemovedAt is null).OrderBy(sensor => sensor.Name, StringComparer.OrdinalIgnoreCase))
        {
            SensorPlacement? placement = sensor.PlacementAt(now);
            views.Add(new SensorView(sensor, await log.LastAsync(sensor.Key, cancellationToken), await log.VerdictCountsAsync(sensor.Key, cancellationToken),
                placement?.PlaceId is { } placeId ? known.GetValueOrDefault(placeId) : null,
                placement?.JarId is { } jarId ? kept.GetValueOrDefault(jarId) : null));
        }
        return views;
    }
}
