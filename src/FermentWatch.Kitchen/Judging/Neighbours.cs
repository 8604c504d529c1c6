using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Kitchen.Judging;

/// <summary>
/// The readings within <see cref="ReadingJudge.Reach"/> of one reading, without itself, as a window that slides forward over a
/// series: each reading enters and leaves it once.
/// </summary>
internal sealed class Neighbours(IReadOnlyList<Reading> readings, PlausibleRange range, Sentinel[] sentinels)
{
    private readonly Lazy<ValueBlocks> _blocks = new(() => new ValueBlocks(readings));
    private readonly Sentinel? _sometimesReal = Array.Find(sentinels, sentinel => sentinel.RealBesideMoreThan is not null);
    private int _from;
    private int _until;
    private int _self = -1;
    private int _beyondIt;

    /// <summary>The values among them that the quantity can show.</summary>
    public RankedValues Believed { get; } = new(readings.Select(reading => reading.Value).Where(range.Holds));

    /// <summary>Whether one of them tells a real value from the sentinel that is the same: near 85 C, for one, and not that value itself.</summary>
    public bool MakeTheSentinelReal => _beyondIt > 0;

    /// <summary>Moves on to the reading with this index, which is not before the last.</summary>
    public void MoveTo(int index)
    {
        Instant at = readings[index].MeasuredAt;
        if (_self >= 0)
            Count(_self, 1);
        while (_until < readings.Count && readings[_until].MeasuredAt - at <= ReadingJudge.Reach)
            Count(_until++, 1);
        while (at - readings[_from].MeasuredAt > ReadingJudge.Reach)
            Count(_from++, -1);
        Count(_self = index, -1);
    }

    /// <summary>How many readings next to each other, this one among them, lie within a limit of its value, and how long they last.</summary>
    public (int Readings, Duration Lasts) Alike(double limit)
    {
        double value = readings[_self].Value;
        int first = Math.Max(_from, _blocks.Value.StartOfRun(_self, value, limit));
        int last = Math.Min(_until, _blocks.Value.EndOfRun(_self, value, limit)) - 1;
        return (last - first + 1, readings[last].MeasuredAt - readings[first].MeasuredAt);
    }

    private void Count(int index, int times)
    {
        double value = readings[index].Value;
        if (_sometimesReal is not null && value > _sometimesReal.RealBesideMoreThan && value != _sometimesReal.Value)
            _beyondIt += times;
        if (range.Holds(value))
            Believed.Add(value, times);
    }
}

/// <summary>Arithmetic of instants that ends at the first and the last instant there is instead of failing beyond it.</summary>
internal static class Bounded
{
    public static Instant Later(Instant at, Duration by) => at > Instant.MaxValue - by ? Instant.MaxValue : at + by;

    public static Instant Earlier(Instant at, Duration by) => at < Instant.MinValue + by ? Instant.MinValue : at - by;
}
