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
    private const double LongestStepHours = 12;
    private const double FirstStepHours = 0.25;

    /// <summary>Runs all members of a table.</summary>
    /// <param name="table">Their constants.</param>
    /// <param name="climate">The jar's temperature.</param>
    /// <param name="trace">What is written down.</param>
    /// <param name="slack">How many times the usual error is allowed to a step.</param>
    public static void Run(LaneTable table, JarClimate climate, Trace trace, double slack = 1)
    {
        Span<Vector256<double>> work = stackalloc Vector256<double>[2 * LaneGroup.WorkLength];
        for (int block = 0; block < table.Blocks; block++)
        {
            var first = new LaneGroup(table.Group(block, 0), climate, trace, LaneTable.FirstMember(block, 0), work[..LaneGroup.WorkLength]);
            var second = new LaneGroup(table.Group(block, 1), climate, trace, LaneTable.FirstMember(block, 1), work[LaneGroup.WorkLength..]);
            RunBlock(ref first, ref second, 1 / slack);
        }
    }

    private static void RunBlock(ref LaneGroup first, ref LaneGroup second, double strictness)
    {
        double t = 0;
        double step = FirstStepHours;
        while (true)
        {
            double meant = Math.Min(step, Math.Max(first.NextStopHours - t, FirstStepHours));
            first.Begin(t, meant);
            second.Begin(t, meant);
            second.Take(t);
            if (!first.Take(t))
                return;
            double stop = first.NextStopHours;
            while (true)
            {
                double h = Math.Min(step, stop - t);
                if (stop - t - h < 0.5 * ShortestStepHours)
                    h = stop - t;
                double error = strictness * Math.Max(first.Try(t, h), second.Try(t, h));
                if (double.IsNaN(error))
                    error = double.MaxValue;
                double factor = 0.85 / Math.Cbrt(Math.Max(error, 1e-6));
                bool taken = error <= 1 || h <= ShortestStepHours;
                if (taken)
                {
                    first.Advance(h);
                    second.Advance(h);
                    t = stop - t - h == 0 ? stop : t + h;
                    // A step cut short by a stop says nothing against the longer one that was meant.
                    step = Math.Clamp(Math.Max(h * Math.Min(factor, 2.5), h < step && factor > 1 ? step : 0), ShortestStepHours, LongestStepHours);
                    break;
                }
                step = Math.Max(h * Math.Max(factor, 0.2), ShortestStepHours);
            }
        }
    }
}
