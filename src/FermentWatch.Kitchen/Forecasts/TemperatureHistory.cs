using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Kitchen.Forecasts;

/// <summary>Closed quarter-hour means by place and by jar, read once for many jars.</summary>
public sealed class TemperatureHistory
{
    private readonly Dictionary<(Guid Where, Instant Start), (double Sum, int Sensors)> _means = [];

    /// <summary>Nothing was measured.</summary>
    public static TemperatureHistory Empty { get; } = new();

    private TemperatureHistory()
    {
    }

    /// <summary>Reads the means of every sensor from an instant until the last closed quarter hour.</summary>
    public static async Task<TemperatureHistory> ReadAsync(
        IReadingLog log, IReadOnlyList<Sensor> sensors, Instant from, Instant until, CancellationToken cancellationToken)
    {
        var history = new TemperatureHistory();
        // By key, so that the mean over several sensors of one place is added up in the same order every time.
        foreach (Sensor sensor in sensors.OrderBy(sensor => sensor.Key))
            foreach (ReadingMean mean in await log.MeansAsync(sensor.Key, Quantity.Temperature, MeanSpan.QuarterHour, from, until,
                cancellationToken))
                if (sensor.PlacementAt(mean.Start) is { } placement && (placement.JarId ?? placement.PlaceId) is { } where)
                    history.Add(where, mean);
        return history;
    }

    /// <summary>Mean Celsius in a place or jar in the quarter hour that starts then; null where nothing counted.</summary>
    public double? CelsiusAt(Guid placeOrJar, Instant start) =>
        _means.TryGetValue((placeOrJar, start), out var entry) ? entry.Sum / entry.Sensors : null;

    /// <summary>Means of a place or jar over a span of quarter hours, null where nothing counted.</summary>
    public double?[] Over(Guid placeOrJar, Instant from, Instant until)
    {
        var values = new double?[Math.Max(0, QuarterHour.Between(from, until))];
        for (int i = 0; i < values.Length; i++)
            values[i] = CelsiusAt(placeOrJar, from + (QuarterHour.Length * i));
        return values;
    }

    private void Add(Guid where, ReadingMean mean)
    {
        (double sum, int count) = _means.GetValueOrDefault((where, mean.Start));
        _means[(where, mean.Start)] = (sum + mean.Value, count + 1);
    }
}
