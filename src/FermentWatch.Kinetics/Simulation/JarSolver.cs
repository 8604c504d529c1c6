using System.Runtime.Intrinsics;

namespace FermentWatch.Kinetics.Simulation;

/// <summary>
/// Moves members forward, eight at a time, by Ralston's third-order Runge-Kutta method with the midpoint rule inside it as
/// the measure of error (Ralston 1962, Math. Comp. 16:431-437); steps are as long as all eight lanes allow. Each stage takes
/// the mean temperature of its own part of the step, so that the whole record counts however long the step. Nothing is
/// allocated once a run has begun.
/// </summary>
internal static class JarSolver
{
    private const double ShortestStepHours = 0.02;
    private const double LongestStepHours = 12;
    private const double FirstStepHours = 0.25;
    private const double LnCountTolerance = 0.0018;
    private const double AcidToleranceMoles = 2e-5;

    public static void Run(LaneTable table, JarClimate climate, Trace trace)
    {
        Span<Vector512<double>> work = stackalloc Vector512<double>[(State.Count * 5) + 2];
        for (int block = 0; block < table.Blocks; block++)
            RunBlock(table.Block(block), climate, trace, block * LaneTable.Lanes, work);
    }

    private static void RunBlock(ReadOnlySpan<Vector512<double>> c, JarClimate climate, Trace trace, int firstMember, Span<Vector512<double>> work)
    {
        Span<Vector512<double>> y = work[..State.Count];
        Span<Vector512<double>> k1 = work.Slice(State.Count, State.Count);
        Span<Vector512<double>> k2 = work.Slice(2 * State.Count, State.Count);
        Span<Vector512<double>> k3 = work.Slice(3 * State.Count, State.Count);
        Span<Vector512<double>> at = work.Slice(4 * State.Count, State.Count);
        var writer = new BlockWriter(trace, firstMember, climate, c);
        Begin(c, y);
        double t = 0;
        double step = FirstStepHours;
        Vector512<double> lnH = StartLnHydrogen(c, Celsius(c, climate, 0, 0.25), y);
        while (true)
        {
            double stop = writer.NextStopHours;
            LaneGrowth.Derivative(c, t, Celsius(c, climate, t, t + (2.0 / 9 * Math.Min(step, Math.Max(stop - t, 0.25)))), y, k1, ref lnH, newtonSteps: 2);
            if (!writer.Take(t, y, k1, lnH))
                return;
            stop = writer.NextStopHours;
            while (true)
            {
                double h = Math.Min(step, stop - t);
                if (stop - t - h < 0.5 * ShortestStepHours)
                    h = stop - t;
                double error = TryStep(c, climate, t, h, y, k1, k2, k3, at, lnH);
                double factor = 0.85 / Math.Cbrt(Math.Max(error, 1e-6));
                bool taken = error <= 1 || h <= ShortestStepHours;
                if (taken)
                {
                    Advance(y, k1, k2, k3, h);
                    writer.Moved(h, y);
                    t = stop - t - h == 0 ? stop : t + h;
                    // A step cut short by a stop says nothing against the longer one that was meant.
                    step = Math.Clamp(Math.Max(h * Math.Min(factor, 2.5), h < step && factor > 1 ? step : 0), ShortestStepHours, LongestStepHours);
                    break;
                }
                step = Math.Max(h * Math.Max(factor, 0.2), ShortestStepHours);
            }
        }
    }

    private static double TryStep(
        ReadOnlySpan<Vector512<double>> c, JarClimate climate, double t, double h, ReadOnlySpan<Vector512<double>> y,
        ReadOnlySpan<Vector512<double>> k1, Span<Vector512<double>> k2, Span<Vector512<double>> k3, Span<Vector512<double>> at, Vector512<double> lnH)
    {
        Vector512<double> half = Vector512.Create(0.5 * h);
        for (int i = 0; i < State.Count; i++)
            at[i] = y[i] + (half * k1[i]);
        LaneGrowth.Derivative(c, t + (0.5 * h), Celsius(c, climate, t + (2.0 / 9 * h), t + (5.0 / 9 * h)), at, k2, ref lnH, newtonSteps: 1);
        Vector512<double> most = Vector512.Create(0.75 * h);
        for (int i = 0; i < State.Count; i++)
            at[i] = y[i] + (most * k2[i]);
        LaneGrowth.Derivative(c, t + (0.75 * h), Celsius(c, climate, t + (5.0 / 9 * h), t + h), at, k3, ref lnH, newtonSteps: 1);
        return Error(k1, k2, k3, h);
    }

    private static double Error(ReadOnlySpan<Vector512<double>> k1, ReadOnlySpan<Vector512<double>> k2, ReadOnlySpan<Vector512<double>> k3, double h)
    {
        Vector512<double> worst = Vector512<double>.Zero;
        for (int i = 0; i < State.Count; i++)
        {
            // Third-order result less the midpoint rule's: h (2/9 k1 - 2/3 k2 + 4/9 k3).
            Vector512<double> difference = (k1[i] * Vector512.Create(2.0 / 9)) - (k2[i] * Vector512.Create(6.0 / 9)) + (k3[i] * Vector512.Create(4.0 / 9));
            double scale = h / (i < State.HexoseOuter ? LnCountTolerance : AcidToleranceMoles);
            worst = Vector512.Max(worst, Vector512.Abs(difference) * Vector512.Create(scale));
        }
        double largest = 0;
        for (int lane = 0; lane < LaneTable.Lanes; lane++)
            largest = Math.Max(largest, worst[lane]);
        return largest;
    }

    private static void Advance(Span<Vector512<double>> y, ReadOnlySpan<Vector512<double>> k1, ReadOnlySpan<Vector512<double>> k2, ReadOnlySpan<Vector512<double>> k3, double h)
    {
        Vector512<double> w1 = Vector512.Create(2.0 / 9 * h);
        Vector512<double> w2 = Vector512.Create(3.0 / 9 * h);
        Vector512<double> w3 = Vector512.Create(4.0 / 9 * h);
        for (int i = 0; i < State.Count; i++)
            y[i] += (w1 * k1[i]) + (w2 * k2[i]) + (w3 * k3[i]);
        for (int i = State.LagLeft; i < State.Count; i++)
            y[i] = Vector512.Max(y[i], Vector512<double>.Zero);
    }

    private static void Begin(ReadOnlySpan<Vector512<double>> c, Span<Vector512<double>> y)
    {
        for (int g = 0; g < 4; g++)
        {
            y[State.LnCount + g] = c[Slot.FirstLnCount + g];
            y[State.LagLeft + g] = Vector512<double>.One;
        }
        y[State.HexoseOuter] = c[Slot.FirstHexoseOuter];
        y[State.HexoseInner] = c[Slot.FirstHexoseInner];
        y[State.LacticOuter] = c[Slot.FirstLactic];
        y[State.AceticOuter] = c[Slot.FirstAcetic];
        y[State.LacticInner] = Vector512<double>.Zero;
        y[State.AceticInner] = Vector512<double>.Zero;
    }

    private static Vector512<double> StartLnHydrogen(ReadOnlySpan<Vector512<double>> c, Vector512<double> celsius, ReadOnlySpan<Vector512<double>> y) =>
        LaneChemistry.LnHydrogen(c, Vector512.Create(-5 * LaneChemistry.Ln10), LaneGrowth.NativeOuter(c, 0), y[State.LacticOuter], y[State.AceticOuter], celsius, 40);

    private static Vector512<double> Celsius(ReadOnlySpan<Vector512<double>> c, JarClimate climate, double from, double to) =>
        LaneClimate.Celsius(c, climate.MeanCelsius(from, to), climate.MeanSpread(from, to));
}
