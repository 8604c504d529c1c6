using System.Runtime.Intrinsics;

namespace FermentWatch.Kinetics.Simulation;

/// <summary>
/// Moves members forward, eight at a time, by Ralston's third-order Runge-Kutta method with the midpoint rule inside it as
/// the measure of error (Ralston 1962, Math. Comp. 16:431-437); steps are as long as all eight allow. Each stage takes the mean
/// temperature of its own part of the step, so that the whole record counts however long the step. Nothing is allocated once a
/// run has begun.
/// </summary>
internal static class JarSolver
{
    private const double ShortestStepHours = 0.02;
    public const double LongestStepHours = 12;
    private const double FirstStepHours = 0.25;

    /// <summary>Runs all members of a table.</summary>
    /// <param name="table">Their constants.</param>
    /// <param name="climate">The jar's temperature.</param>
    /// <param name="trace">What is written down.</param>
    /// <param name="slack">How many times the usual error is allowed to a step.</param>
    /// <param name="from">Where to go on from, not after the first time of the trace; null for a run from packing on.</param>
    /// <param name="keep">Takes the members at its time; null where nothing is kept.</param>
    public static void Run(LaneTable table, JarClimate climate, Trace trace, double slack = 1, Checkpoint? from = null, Checkpoint? keep = null)
    {
        Span<Vector256<double>> work = stackalloc Vector256<double>[2 * LaneGroup.WorkLength];
        for (int block = 0; block < table.Blocks; block++)
        {
            var first = new LaneGroup(table.Group(block, 0), climate, trace, LaneTable.FirstMember(block, 0), work[..LaneGroup.WorkLength]);
            var second = new LaneGroup(table.Group(block, 1), climate, trace, LaneTable.FirstMember(block, 1), work[LaneGroup.WorkLength..]);
            (double t, double step) = from?.GoOn(block, ref first, ref second) ?? (0, FirstStepHours);
            RunBlock(ref first, ref second, t, step, 1 / slack, keep, block);
        }
    }

    /// <summary>From one stop to the next: at each the members are looked at, and between them steps are tried until they end there.</summary>
    private static void RunBlock(ref LaneGroup first, ref LaneGroup second, double t, double step, double strictness, Checkpoint? keep, int block)
    {
        while (true)
        {
            if (keep?.Keeps(t) == true)
                keep.Keep(block, t, step, first, second);
            double meant = Math.Min(step, Math.Max(first.NextStopHours - t, FirstStepHours));
            first.Begin(t, meant);
            second.Begin(t, meant);
            second.Take(t);
            if (!first.Take(t))
                return;
            double taken = Step(ref first, ref second, t, first.NextStopHours, ref step, strictness);
            t = first.NextStopHours - t - taken == 0 ? first.NextStopHours : t + taken;
        }
    }

    /// <summary>
    /// Tries steps, each shorter than the one before, until one is within the error, and takes it. How long it was, hours; how long the
    /// next should be is left in <paramref name="step"/> (Hairer, Norsett and Wanner 1993, Solving Ordinary Differential Equations I, II.4).
    /// </summary>
    private static double Step(ref LaneGroup first, ref LaneGroup second, double t, double stop, ref double step, double strictness)
    {
        while (true)
        {
            double h = Math.Min(step, stop - t);
            if (stop - t - h < 0.5 * ShortestStepHours)
                h = stop - t;
            double error = strictness * Math.Max(first.Try(t, h), second.Try(t, h));
            double factor = 0.85 / Math.Cbrt(double.IsNaN(error) ? double.MaxValue : Math.Max(error, 1e-6));
            if (error <= 1 || h <= ShortestStepHours)
            {
                first.Advance(h);
                second.Advance(h);
                // A step cut short by a stop says nothing against the longer one that was meant.
                step = Math.Clamp(Math.Max(h * Math.Min(factor, 2.5), h < step && factor > 1 ? step : 0), ShortestStepHours, LongestStepHours);
                return h;
            }
            step = Math.Max(h * Math.Max(factor, 0.2), ShortestStepHours);
        }
    }
}
