using System.Runtime.Intrinsics;

namespace FermentWatch.Kinetics.Simulation;

/// <summary>What is watched for a level.</summary>
internal enum Watched
{
    BrinePh,
    CentrePh,
    Acidity,
    Sourness,
}

/// <summary>
/// Each member's day at a level, NaN where it does not get there: of an acidity or a sourness the first time, of a pH the last time
/// that the curve comes down through it, because starter brine and vinegar begin below and rise as the vegetables give their buffer.
/// </summary>
internal sealed class Passage
{
    private readonly bool _last;
    private readonly double _sign;
    private readonly double[] _signedLevels;
    private readonly double _highest;

    /// <summary>One level for all.</summary>
    public Passage(Watched watched, double level, int members)
        : this(watched, [.. Enumerable.Repeat(level, members)])
    {
    }

    /// <summary>Each member its own level.</summary>
    public Passage(Watched watched, double[] levels)
    {
        int members = levels.Length;
        Watched = watched;
        _last = watched is Watched.BrinePh or Watched.CentrePh;
        _sign = _last ? 1 : -1;
        _signedLevels = [.. levels.Select(level => _sign * level)];
        _highest = _signedLevels.Max();
        Days = new double[members];
        Array.Fill(Days, double.NaN);
    }

    public Watched Watched { get; }

    public double[] Days { get; }

    /// <summary>Turned so that it is reached from above.</summary>
    public Vector256<double> Signed(Vector256<double> value) => Vector256.Create(_sign) * value;

    /// <summary>Takes the crossings of a step; between its ends the quantity is taken as a straight line.</summary>
    public void Take(int firstMember, double fromHours, Vector256<double> from, double toHours, Vector256<double> to)
    {
        Vector256<double> highest = Vector256.Create(_highest);
        if (!Vector256.LessThanOrEqualAny(to, highest) && !Vector256.LessThanOrEqualAny(from, highest))
            return;
        for (int lane = 0; lane < LaneTable.Lanes && firstMember + lane < Days.Length; lane++)
        {
            int member = firstMember + lane;
            double end = to[lane];
            double level = _signedLevels[member];
            if (_last && end > level)
                Days[member] = double.NaN;
            if (!double.IsNaN(Days[member]) || !(end <= level))
                continue;
            double start = from[lane];
            double share = start > level ? (start - level) / (start - end) : 0;
            Days[member] = (fromHours + (share * (toHours - fromHours))) / 24;
        }
    }
}
