using System.Runtime.Intrinsics;

namespace FermentWatch.Kinetics.Simulation;

/// <summary>
/// All members at a time that is written down, as they stood before it was: a run that goes on from here comes to the same bits as one
/// from packing on, where members and temperatures until a little after it are the same.
/// </summary>
/// <param name="hours">The time, hours after packing; one of those that are written down.</param>
/// <param name="blocks">Blocks of the table of members.</param>
/// <param name="passages">Levels that are watched.</param>
/// <param name="members">Members of the ensemble.</param>
internal sealed class Checkpoint(double hours, int blocks, int passages, int members)
{
    /// <summary>How far beyond it temperatures are looked at, hours.</summary>
    public const double LooksAheadHours = 0.5;

    private readonly double[] _steps = new double[blocks];
    private readonly double[] _before = new double[2 * blocks];
    private readonly Vector256<double>[] _vectors = new Vector256<double>[2 * blocks * LaneGroup.KeptLength];

    public double Hours => hours;

    /// <summary>Each member's day at each level until then.</summary>
    public double[][] PassageDays { get; } = [.. Enumerable.Range(0, passages).Select(_ => new double[members])];

    /// <summary>The step with which a block goes on, hours.</summary>
    public ref double Step(int block) => ref _steps[block];

    /// <summary>The time before, hours.</summary>
    public ref double Before(int block, int group) => ref _before[(2 * block) + group];

    /// <summary>What is kept of a group.</summary>
    public Span<Vector256<double>> Of(int block, int group) => _vectors.AsSpan(((2 * block) + group) * LaneGroup.KeptLength, LaneGroup.KeptLength);
}
