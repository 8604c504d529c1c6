using System.Runtime.Intrinsics;

namespace FermentWatch.Kinetics.Simulation;

/// <summary>
/// All members at a time on their way: a run that goes on from here comes to the same bits as one from packing on, where members and
/// temperatures until <see cref="SeenUntilHours"/> are the same.
/// </summary>
internal sealed class Checkpoint
{
    /// <summary>How far beyond a time the slope and the spread at it look, hours.</summary>
    public const double SlopeLooksAheadHours = 0.5;

    private readonly bool _atAnyStep;
    private readonly double[] _hours;
    private readonly double[] _steps;
    private readonly double[] _before;
    private readonly Vector256<double>[] _vectors;

    private Checkpoint(double hours, double seenUntilHours, bool atAnyStep, LaneTable table, Trace trace)
    {
        (Hours, SeenUntilHours, _atAnyStep) = (hours, seenUntilHours, atAnyStep);
        _hours = new double[table.Blocks];
        _steps = new double[table.Blocks];
        _before = new double[2 * table.Blocks];
        _vectors = new Vector256<double>[2 * table.Blocks * LaneGroup.KeptLength];
        PassageDays = [.. trace.Passages.Select(passage => new double[passage.Days.Length])];
    }

    /// <summary>The latest time at which members are kept, hours after packing.</summary>
    public double Hours { get; }

    /// <summary>Up to when temperatures have a part in it, hours after packing.</summary>
    public double SeenUntilHours { get; }

    /// <summary>Each member's day at each level until then.</summary>
    public double[][] PassageDays { get; }

    /// <summary>The last written time whose temperatures are known; null where that is packing itself, or the end.</summary>
    /// <param name="knownHours">Up to when they are known, hours after packing.</param>
    /// <param name="table">The members.</param>
    /// <param name="trace">What is written down.</param>
    /// <param name="from">Where the run goes on from, which is kept where there is no later one; null for a run from packing on.</param>
    public static Checkpoint? AtWrittenTime(double knownHours, LaneTable table, Trace trace, Checkpoint? from)
    {
        int time = Array.FindLastIndex(trace.Days, trace.Days.Length - 2, day => 24 * day <= knownHours - SlopeLooksAheadHours);
        double latest = time < 0 ? 0 : 24 * trace.Days[time];
        return latest <= (from?.Hours ?? 0) ? from : new Checkpoint(latest, latest + SlopeLooksAheadHours, false, table, trace);
    }

    /// <summary>The last step of each block that no temperature had a part in, tried in vain or taken, but known ones.</summary>
    public static Checkpoint? AtLastStep(double knownHours, LaneTable table, Trace trace, Checkpoint? from)
    {
        double latest = knownHours - JarSolver.LongestStepHours - SlopeLooksAheadHours;
        return latest <= (from?.Hours ?? 0) ? from : new Checkpoint(latest, knownHours, true, table, trace);
    }

    /// <summary>Whether a block is kept at a time.</summary>
    public bool Keeps(double hours) => _atAnyStep ? hours <= Hours : hours == Hours;

    /// <summary>Keeps a block.</summary>
    public void Keep(int block, double hours, double step, in LaneGroup first, in LaneGroup second)
    {
        _hours[block] = hours;
        _steps[block] = step;
        first.Keep(Of(block, 0), ref _before[2 * block], PassageDays);
        second.Keep(Of(block, 1), ref _before[(2 * block) + 1], PassageDays);
    }

    /// <summary>Has a block go on; the time and the step, hours.</summary>
    public (double Hours, double Step) GoOn(int block, ref LaneGroup first, ref LaneGroup second)
    {
        first.GoOn(Of(block, 0), _before[2 * block], PassageDays);
        second.GoOn(Of(block, 1), _before[(2 * block) + 1], PassageDays);
        return (_hours[block], _steps[block]);
    }

    private Span<Vector256<double>> Of(int block, int group) => _vectors.AsSpan(((2 * block) + group) * LaneGroup.KeptLength, LaneGroup.KeptLength);
}
