using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>Finds places where the air was dry over the last day, so that brine dries away sooner.</summary>
public sealed class DryPlaces(ISensorBook sensors, IReadingLog log)
{
    /// <summary>Mean relative humidity below which a room counts as dry, per cent; this project's own choice.</summary>
    private const double DryBelowPercent = 35;

    private static readonly Duration Day = Duration.FromDays(1);

    /// <summary>Places with a humidity sensor that showed dry air over the day before an instant.</summary>
    public async Task<IReadOnlySet<Guid>> ReadAsync(Instant now, CancellationToken cancellationToken)
    {
        var dry = new HashSet<Guid>();
        foreach (Sensor sensor in await sensors.AllAsync(cancellationToken))
        {
            if (sensor.RemovedAt is not null || sensor.PlacementAt(now)?.PlaceId is not { } place)
                continue;
            IReadOnlyList<ReadingMean> hours = await log.MeansAsync(sensor.Key, Quantity.Humidity, MeanSpan.Hour, now - Day, now, cancellationToken);
            if (hours.Count > 0 && hours.Average(hour => hour.Value) < DryBelowPercent)
                dry.Add(place);
        }
        return dry;
    }
}
