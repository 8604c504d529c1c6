using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Kitchen.Judging;

/// <summary>
/// The readings within <see cref="ReadingJudge.Reach"/> of one reading, without itself, as a window that slides forward over a
/// series: each reading enters and leaves it once.
/// </summary>
internal sealed class Neighbours(IReadOnlyList<Reading> readings, PlausibleRange range)
{
    /// <summary>A power-up value is told from a real 85 C by neighbours this warm.</summary>
    private const double NearEightyFiveCelsius = 70;

    private readonly Lazy<ValueBlocks> _blocks = new(() => new ValueBlocks(readings));
    private int _from;
    private int _until;
    private int _self = -1;
    private int _nearEightyFive;

    /// <summary>The values among them that the quantity can show.</summary>
    public RankedValues Believed { get; } = new(readings.Select(reading => reading.Value).Where(range.Holds));

    /// <summary>Whether one of them is about as warm as a sensor's power-up value, and not that value itself.</summary>
    public bool AnyNearEightyFive => _nearEightyFive > 0;

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
        if (value is > NearEightyFiveCelsius and not 85.0)
            _nearEightyFive += times;
        if (range.Holds(value))
            Believed.Add(value, times);
    }
}
