using FermentWatch.Kitchen.Jars;
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
            await history.AddAsync(log, sensor, new SensorSpan(sensor.Key, from, until), cancellationToken);
        return history;
    }

    /// <summary>
    /// Reads what a forecast of one jar is made of, and the days from which the outlook of any other place is learned; nothing of a sensor
    /// that stood elsewhere.
    /// </summary>
    public static async Task<TemperatureHistory> OfJarAsync(
        IReadingLog log, IReadOnlyList<Sensor> sensors, Jar jar, Instant asOf, CancellationToken cancellationToken)
    {
        var history = new TemperatureHistory();
        var byKey = sensors.ToDictionary(sensor => sensor.Key);
        var lately = sensors.Select(sensor => new SensorSpan(sensor.Key, asOf - Surroundings.LearnedFrom, asOf));
        foreach (SensorSpan span in JarSpans.Joined(new MeansOfJars(log, sensors).SpansOf(jar, asOf).Concat(lately)))
            await history.AddAsync(log, byKey[span.SensorKey], span, cancellationToken);
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

    private async Task AddAsync(IReadingLog log, Sensor sensor, SensorSpan span, CancellationToken cancellationToken)
    {
        foreach (ReadingMean mean in await log.MeansAsync(sensor.Key, Quantity.Temperature, MeanSpan.QuarterHour, span.From, span.Until,
            cancellationToken))
            if (sensor.PlacementAt(mean.Start) is { } placement && (placement.JarId ?? placement.PlaceId) is { } where)
                Add(where, mean);
    }

    private void Add(Guid where, ReadingMean mean)
    {
        (double sum, int count) = _means.GetValueOrDefault((where, mean.Start));
        _means[(where, mean.Start)] = (sum + mean.Value, count + 1);
    }
}
