using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Kitchen.Judging;

/// <summary>A reading that could not be judged.</summary>
/// <param name="SensorKey">Its sensor.</param>
/// <param name="Quantity">What was measured.</param>
/// <param name="MeasuredAt">When; where a day is judged again, its beginning.</param>
/// <param name="Reason">What kept it from being judged.</param>
public sealed record SetAsideReading(int SensorKey, Quantity Quantity, Instant MeasuredAt, string Reason);

/// <summary>What could not be judged since the start: all are counted, each is kept once, and the last hundred of them.</summary>
public sealed class SetAsideReadings
{
    private const int MostKept = 100;

    private readonly Lock _gate = new();
    private readonly List<SetAsideReading> _last = [];
    private long _count;

    /// <summary>How many.</summary>
    public long Count => Interlocked.Read(ref _count);

    /// <summary>The last of them.</summary>
    public IReadOnlyList<SetAsideReading> Last
    {
        get
        {
            lock (_gate)
                return [.. _last];
        }
    }

    internal void Add(SetAsideReading reading)
    {
        lock (_gate)
        {
            if (_last.Contains(reading))
                return;
            Interlocked.Increment(ref _count);
            _last.Add(reading);
            if (_last.Count > MostKept)
                _last.RemoveAt(0);
        }
    }
}
