using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Storage.Readings.Histories;

/// <summary>Folds buckets and readings of one sensor after another into points.</summary>
/// <param name="widthMs">Length of a point, milliseconds.</param>
internal sealed class PointFold(long widthMs)
{
    private readonly Dictionary<long, Point> _points = [];
    private readonly List<(long StartMs, Point Point)> _ofSensor = [];
    private long _lastStart = long.MinValue;
    private Point _open;

    /// <summary>How many readings were folded in.</summary>
    internal long Readings { get; private set; }

    /// <summary>Adds a bucket or a reading of the present sensor; they come by time.</summary>
    internal void Add(long startMs, double mean, double minimum, double maximum, long count)
    {
        long start = PointWidth.StartMs(widthMs, startMs);
        if (start != _lastStart)
            Close();
        _lastStart = start;
        _open = _open.Count == 0 ? new Point(mean * count, minimum, maximum, count, 1)
            : new Point(_open.Sum + (mean * count), Math.Min(_open.Minimum, minimum), Math.Max(_open.Maximum, maximum), _open.Count + count, 1);
        Readings += count;
    }

    /// <summary>Goes on to the next sensor, which counts as much as this one whatever its rhythm.</summary>
    internal void NextSensor()
    {
        Close();
        _lastStart = long.MinValue;
        foreach (var (startMs, point) in _ofSensor)
        {
            var own = point with { Sum = point.Sum / point.Count };
            _points[startMs] = _points.TryGetValue(startMs, out var others) ? others.With(own) : own;
        }
        _ofSensor.Clear();
    }

    /// <summary>The points, by time.</summary>
    internal List<ReadingMean> Points() =>
        [.. _points.OrderBy(entry => entry.Key).Select(entry => new ReadingMean(Instant.FromUnixTimeMilliseconds(entry.Key),
            Math.Clamp(entry.Value.Sum / entry.Value.Sensors, entry.Value.Minimum, entry.Value.Maximum), entry.Value.Minimum, entry.Value.Maximum,
            checked((int)entry.Value.Count)))];

    private void Close()
    {
        if (_open.Count > 0)
            _ofSensor.Add((_lastStart, _open));
        _open = default;
    }

    /// <summary>While a sensor is read its sum of readings; after it the sum of the sensors' means.</summary>
    private readonly record struct Point(double Sum, double Minimum, double Maximum, long Count, int Sensors)
    {
        internal Point With(Point other) => new(Sum + other.Sum, Math.Min(Minimum, other.Minimum), Math.Max(Maximum, other.Maximum),
            Count + other.Count, Sensors + other.Sensors);
    }
}
