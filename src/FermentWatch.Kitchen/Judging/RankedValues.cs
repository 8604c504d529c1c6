namespace FermentWatch.Kitchen.Judging;

/// <summary>
/// A bag of values that tells its median as they come and go, each in logarithmic time: a tree of partial sums over the ranks of
/// all values that may ever be in it (Fenwick, "A new data structure for cumulative frequency tables", Softw. Pract. Exper. 24, 1994).
/// </summary>
internal sealed class RankedValues
{
    private readonly double[] _values;
    private readonly int[] _sums;
    private readonly int _highestBit;

    /// <summary>An empty bag.</summary>
    /// <param name="possible">Every value that may come in, in any order.</param>
    public RankedValues(IEnumerable<double> possible)
    {
        _values = [.. possible.Distinct().Order()];
        _sums = new int[_values.Length + 1];
        _highestBit = _values.Length == 0 ? 0 : 1 << int.Log2(_values.Length);
    }

    /// <summary>How many values are in it.</summary>
    public int Count { get; private set; }

    /// <summary>Puts a value in, or takes it out with -1.</summary>
    public void Add(double value, int times)
    {
        Count += times;
        for (int place = Array.BinarySearch(_values, value) + 1; place < _sums.Length; place += place & -place)
            _sums[place] += times;
    }

    /// <summary>The middle value, or the mean of the two in the middle.</summary>
    public double Median() => Middle(At);

    /// <summary>The median of the distances from a value.</summary>
    public double MedianDistance(double from)
    {
        int below = CountUpTo(from);
        return Middle(index => DistanceAt(index, from, below));
    }

    private double Middle(Func<int, double> at)
    {
        int half = Count / 2;
        return Count % 2 == 1 ? at(half) : (at(half - 1) + at(half)) / 2;
    }

    /// <summary>The value at an index in ascending order.</summary>
    private double At(int index)
    {
        int place = 0;
        for (int step = _highestBit; step > 0; step >>= 1)
            if (place + step < _sums.Length && _sums[place + step] <= index)
            {
                place += step;
                index -= _sums[place];
            }
        return _values[place];
    }

    private int CountUpTo(double value)
    {
        int found = Array.BinarySearch(_values, value);
        int count = 0;
        for (int place = found >= 0 ? found + 1 : ~found; place > 0; place -= place & -place)
            count += _sums[place];
        return count;
    }

    /// <summary>The distance at an index in ascending order. Those below and those above are each in order already; the two are merged by
    /// halving.</summary>
    private double DistanceAt(int index, double from, int below)
    {
        int above = Count - below;
        double Down(int i) => i < below ? Math.Abs(At(below - 1 - i) - from) : double.PositiveInfinity;
        double Up(int i) => i < above ? Math.Abs(At(below + i) - from) : double.PositiveInfinity;
        int low = Math.Max(0, index - above), high = Math.Min(index, below);
        while (low < high)
        {
            int taken = (low + high) / 2;
            if (Up(index - taken - 1) <= Down(taken))
                high = taken;
            else
                low = taken + 1;
        }
        return Math.Min(Down(low), Up(index - low));
    }
}
