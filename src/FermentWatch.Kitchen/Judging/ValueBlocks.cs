using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Kitchen.Judging;

/// <summary>The lowest and highest value of blocks of 1, 2, 4 and so on readings, by which the ends of a run of like values are found in few
/// steps.</summary>
internal sealed class ValueBlocks
{
    private readonly List<(double Low, double High)[]> _levels = [];
    private readonly int _count;

    public ValueBlocks(IReadOnlyList<Reading> readings)
    {
        _count = readings.Count;
        _levels.Add([.. readings.Select(reading => (reading.Value, reading.Value))]);
        while (_levels[^1].Length > 1)
            _levels.Add([.. _levels[^1].Chunk(2).Select(pair => (pair.Min(block => block.Low), pair.Max(block => block.High)))]);
    }

    /// <summary>The first index after <paramref name="from"/> whose value is farther than a limit from a value; the count where there is
    /// none.</summary>
    public int EndOfRun(int from, double value, double limit)
    {
        int level = 0, next = from;
        while (next < _count)
        {
            if (!IsWithin(level, next >> level, value, limit))
            {
                if (level-- == 0)
                    return next;
                continue;
            }
            next += 1 << level;
            while (level + 1 < _levels.Count && next % (2 << level) == 0)
                level++;
        }
        return _count;
    }

    /// <summary>The first index of the run of values within a limit of a value that leads up to <paramref name="until"/>.</summary>
    public int StartOfRun(int until, double value, double limit)
    {
        int level = 0, end = until + 1;
        while (end > 0)
        {
            if (!IsWithin(level, (end >> level) - 1, value, limit))
            {
                if (level-- == 0)
                    return end;
                continue;
            }
            end -= 1 << level;
            while (level + 1 < _levels.Count && end % (2 << level) == 0)
                level++;
        }
        return 0;
    }

    // The values of a block that lie farthest from a value are its lowest and its highest.
    private bool IsWithin(int level, int block, double value, double limit)
    {
        (double low, double high) = _levels[level][block];
        return Math.Abs(low - value) <= limit && Math.Abs(high - value) <= limit;
    }
}
