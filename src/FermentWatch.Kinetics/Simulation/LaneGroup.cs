using System.Runtime.Intrinsics;

namespace FermentWatch.Kinetics.Simulation;

/// <summary>Four members on their way: their state, the slopes of the step that is tried, and what is written of them.</summary>
internal ref struct LaneGroup
{
    /// <summary>Vectors of working space a group needs.</summary>
    public const int WorkLength = State.Count * 5;

    /// <summary>Vectors of a checkpoint for a group.</summary>
    public const int KeptLength = State.Count + 1 + BlockWriter.KeptLength;

    private const double LnCountTolerance = 0.0018;
    private const double AcidToleranceMoles = 2e-5;

    private readonly ReadOnlySpan<Vector256<double>> _c;
    private readonly JarClimate _climate;
    private readonly Span<Vector256<double>> _y;
    private readonly Span<Vector256<double>> _k1;
    private readonly Span<Vector256<double>> _k2;
    private readonly Span<Vector256<double>> _k3;
    private readonly Span<Vector256<double>> _at;
    private BlockWriter _writer;
    private Vector256<double> _lnH;
    private Vector256<double> _lnHAhead;

    public LaneGroup(ReadOnlySpan<Vector256<double>> c, JarClimate climate, Trace trace, int firstMember, Span<Vector256<double>> work)
    {
        _c = c;
        _climate = climate;
        _y = work[..State.Count];
        _k1 = work.Slice(State.Count, State.Count);
        _k2 = work.Slice(2 * State.Count, State.Count);
        _k3 = work.Slice(3 * State.Count, State.Count);
        _at = work.Slice(4 * State.Count, State.Count);
        _writer = new BlockWriter(trace, firstMember, climate, c);
        Pack();
        _lnH = LaneChemistry.LnHydrogen(c, Vector256.Create(-5 * LaneChemistry.Ln10), LaneGrowth.NativeOuter(c, 0), _y[State.LacticOuter],
            _y[State.AceticOuter],
            Celsius(0, 0.25), 40);
    }

    /// <summary>Where the next step must end, hours after packing.</summary>
    public readonly double NextStopHours => _writer.NextStopHours;

    /// <summary>Writes down what it goes on from.</summary>
    public readonly void Keep(Span<Vector256<double>> to, ref double before, double[][] passageDays)
    {
        _y.CopyTo(to);
        to[State.Count] = _lnH;
        _writer.Keep(to[(State.Count + 1)..], ref before, passageDays);
    }

    /// <summary>Goes on from there.</summary>
    public void GoOn(ReadOnlySpan<Vector256<double>> from, double before, double[][] passageDays)
    {
        from[..State.Count].CopyTo(_y);
        _lnH = from[State.Count];
        _writer.GoOn(from[(State.Count + 1)..], before, passageDays);
    }

    /// <summary>The slope with which a step begins.</summary>
    /// <param name="t">Hours after packing.</param>
    /// <param name="meant">How long the step is meant to be, hours.</param>
    public void Begin(double t, double meant) =>
        LaneGrowth.Derivative(_c, t, Celsius(t, t + (2.0 / 9 * meant)), _y, _k1, ref _lnH, newtonSteps: 1);

    /// <summary>Writes the state down where it is asked for; false when that was the last.</summary>
    public bool Take(double t) => _writer.Take(t, _y, _k1, _lnH);

    /// <summary>Tries a step; its error over what is allowed, in the worst of the members.</summary>
    public double Try(double t, double h)
    {
        Vector256<double> lnH = _lnH;
        Vector256<double> half = Vector256.Create(0.5 * h);
        for (int i = 0; i < State.Count; i++)
            _at[i] = _y[i] + (half * _k1[i]);
        LaneGrowth.Derivative(_c, t + (0.5 * h), Celsius(t + (2.0 / 9 * h), t + (5.0 / 9 * h)), _at, _k2, ref lnH, newtonSteps: 1);
        Vector256<double> most = Vector256.Create(0.75 * h);
        for (int i = 0; i < State.Count; i++)
            _at[i] = _y[i] + (most * _k2[i]);
        LaneGrowth.Derivative(_c, t + (0.75 * h), Celsius(t + (5.0 / 9 * h), t + h), _at, _k3, ref lnH, newtonSteps: 1);
        _lnHAhead = lnH;
        return Error(h);
    }

    /// <summary>Takes the step that was tried.</summary>
    public void Advance(double h)
    {
        Vector256<double> w1 = Vector256.Create(2.0 / 9 * h);
        Vector256<double> w2 = Vector256.Create(3.0 / 9 * h);
        Vector256<double> w3 = Vector256.Create(4.0 / 9 * h);
        for (int i = 0; i < State.Count; i++)
            _y[i] += (w1 * _k1[i]) + (w2 * _k2[i]) + (w3 * _k3[i]);
        for (int i = State.LagLeft; i < State.Count; i++)
            _y[i] = Vector256.Max(_y[i], Vector256<double>.Zero);
        // The last stage stood at three quarters of the step: a straight line on to its end is so near that one Newton step is enough.
        _lnH += (_lnHAhead - _lnH) * Vector256.Create(4.0 / 3);
        _writer.Moved(h, _y);
    }

    private readonly double Error(double h)
    {
        Vector256<double> worst = Vector256<double>.Zero;
        for (int i = 0; i < State.Count; i++)
        {
            // Third-order result less the midpoint rule's: h (2/9 k1 - 2/3 k2 + 4/9 k3).
            Vector256<double> difference = (_k1[i] * Vector256.Create(2.0 / 9))
                - (_k2[i] * Vector256.Create(6.0 / 9)) + (_k3[i] * Vector256.Create(4.0 / 9));
            double scale = h / (i < State.HexoseOuter ? LnCountTolerance : AcidToleranceMoles);
            worst = Vector256.Max(worst, Vector256.Abs(difference) * Vector256.Create(scale));
        }
        double largest = 0;
        for (int lane = 0; lane < LaneTable.Lanes; lane++)
            largest = Math.Max(largest, worst[lane]);
        return largest;
    }

    private readonly void Pack()
    {
        for (int g = 0; g < 4; g++)
        {
            _y[State.LnCount + g] = _c[MemberConstant.FirstLnCount + g];
            _y[State.LagLeft + g] = Vector256<double>.One;
        }
        _y[State.HexoseOuter] = _c[MemberConstant.FirstHexoseOuter];
        _y[State.HexoseInner] = _c[MemberConstant.FirstHexoseInner];
        _y[State.LacticOuter] = _c[MemberConstant.FirstLactic];
        _y[State.AceticOuter] = _c[MemberConstant.FirstAcetic];
        _y[State.LacticInner] = Vector256<double>.Zero;
        _y[State.AceticInner] = Vector256<double>.Zero;
    }

    private readonly Vector256<double> Celsius(double from, double to) =>
        LaneClimate.Celsius(_c, _climate.MeanCelsius(from, to), _climate.MeanSpread(from, to));
}
