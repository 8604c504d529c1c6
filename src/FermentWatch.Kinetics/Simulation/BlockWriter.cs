using System.Runtime.Intrinsics;
using FermentWatch.Kinetics.Chemistry;

namespace FermentWatch.Kinetics.Simulation;

/// <summary>Follows a block through its run: the middle of the pieces, the first passages, and what is to be written down.</summary>
internal ref struct BlockWriter
{
    private readonly Trace _trace;
    private readonly int _firstMember;
    private readonly JarClimate _climate;
    private readonly ReadOnlySpan<Vector256<double>> _c;
    private readonly bool _watchesPassages;
    private readonly bool _watchesSourness;
    private int _next;
    private double _before;
    private Vector256<double> _lastPh;
    private Vector256<double> _lastCentrePh;
    private Vector256<double> _lastAcidity;
    private Vector256<double> _lastSourness;
    private Vector256<double> _centreLnH;
    private Vector256<double> _centreLactic;
    private Vector256<double> _centreAcetic;
    private Vector256<double> _innerLactic;
    private Vector256<double> _innerAcetic;

    public BlockWriter(Trace trace, int firstMember, JarClimate climate, ReadOnlySpan<Vector256<double>> c)
    {
        _trace = trace;
        _firstMember = firstMember;
        _climate = climate;
        _c = c;
        _watchesPassages = trace.Passages.Count > 0;
        for (int i = 0; i < trace.Passages.Count; i++)
            _watchesSourness |= trace.Passages[i].Watched == Watched.Sourness;
        _before = -1;
    }

    /// <summary>Where the next step must end.</summary>
    public readonly double NextStopHours => _next < _trace.Days.Length ? 24 * _trace.Days[_next] : 0;

    /// <summary>Vectors by which it goes on.</summary>
    public const int KeptLength = 9;

    /// <summary>Writes down what it goes on from.</summary>
    public readonly void Keep(Span<Vector256<double>> to, ref double before, double[][] passageDays)
    {
        ((ReadOnlySpan<Vector256<double>>)[_lastPh, _lastCentrePh, _lastAcidity, _lastSourness, _centreLnH,
            _centreLactic, _centreAcetic, _innerLactic, _innerAcetic]).CopyTo(to);
        before = _before;
        int members = Math.Min(LaneTable.Lanes, _trace.Members - _firstMember);
        for (int i = 0; i < passageDays.Length && members > 0; i++)
            _trace.Passages[i].Days.AsSpan(_firstMember, members).CopyTo(passageDays[i].AsSpan(_firstMember));
    }

    /// <summary>Goes on from there.</summary>
    public void GoOn(ReadOnlySpan<Vector256<double>> from, double before, double[][] passageDays)
    {
        int members = Math.Min(LaneTable.Lanes, _trace.Members - _firstMember);
        for (int i = 0; i < passageDays.Length && members > 0; i++)
            passageDays[i].AsSpan(_firstMember, members).CopyTo(_trace.Passages[i].Days.AsSpan(_firstMember));
        (_lastPh, _lastCentrePh, _lastAcidity, _lastSourness, _centreLnH) = (from[0], from[1], from[2], from[3], from[4]);
        (_centreLactic, _centreAcetic, _innerLactic, _innerAcetic) = (from[5], from[6], from[7], from[8]);
        _before = before;
    }

    /// <summary>Moves the middle of the pieces through a step just taken: exact for a mean that changes along a straight line.</summary>
    public void Moved(double h, ReadOnlySpan<Vector256<double>> y)
    {
        Vector256<double> rate = _c[MemberConstant.Exchange] * Vector256.Create(h);
        Vector256<double> kept = LaneMath.Exp(-rate);
        Vector256<double> slope = (Vector256<double>.One - kept) / rate;
        _centreLactic = Follow(_centreLactic, ref _innerLactic, y[State.LacticInner], kept, slope);
        _centreAcetic = Follow(_centreAcetic, ref _innerAcetic, y[State.AceticInner], kept, slope);
    }

    /// <summary>Takes the state at a time; false when that was the last.</summary>
    public bool Take(double hours, ReadOnlySpan<Vector256<double>> y, ReadOnlySpan<Vector256<double>> dy, Vector256<double> lnH)
    {
        bool write = hours >= NextStopHours;
        if (!write && !_watchesPassages)
            return true;
        Vector256<double> celsius = LaneClimate.Celsius(_c, _climate.At(hours), _climate.MeanSpread(hours, hours + 0.25));
        Vector256<double> offset = LanePace.Line(_c, MemberConstant.PhOffset, hours);
        Vector256<double> ph = (lnH * Vector256.Create(-1 / LaneChemistry.Ln10)) + offset;
        Vector256<double> native = LaneGrowth.NativeOuter(_c, hours);
        Vector256<double> acidity = Vector256.Max(Vector256<double>.Zero,
            (y[State.LacticOuter] + y[State.AceticOuter] + (native * _c[MemberConstant.NativeAcidity])) * Vector256.Create(
                TitratableAcidity.PercentLacticPerMole) * _c[MemberConstant.AcidityFactor]);
        Vector256<double> sourness = write || _watchesSourness ? Sourness(y, lnH, celsius) * _c[MemberConstant.AcidityFactor]
            : Vector256<double>.Zero;
        Vector256<double> centrePh = CentrePh(hours, celsius) + offset;
        Watch(hours, ph, centrePh, acidity, sourness);
        if (!write)
            return true;
        Write(_trace.Ph, ph);
        Write(_trace.CentrePh, centrePh);
        Write(_trace.Acidity, acidity);
        Write(_trace.Sourness, sourness);
        Write(_trace.GasPerDay, Gas(dy));
        Vector256<double> starters = LaneMath.Exp(y[State.LnCount]) + LaneMath.Exp(y[State.LnCount + 1]);
        Vector256<double> all = starters + LaneMath.Exp(y[State.LnCount + 2]) + LaneMath.Exp(y[State.LnCount + 3]);
        Write(_trace.Count, all);
        Write(_trace.StarterShare, starters / all);
        _next++;
        return _next < _trace.Days.Length;
    }

    private static Vector256<double> Follow(Vector256<double> centre, ref Vector256<double> before, Vector256<double> now, Vector256<double> kept,
        Vector256<double> slope)
    {
        Vector256<double> change = now - before;
        Vector256<double> moved = now - (change * slope) + ((centre - before) * kept);
        before = now;
        return moved;
    }

    private readonly Vector256<double> Sourness(ReadOnlySpan<Vector256<double>> y, Vector256<double> lnH, Vector256<double> celsius)
    {
        Vector256<double> h = LaneMath.Exp(lnH);
        Vector256<double> protonated = (y[State.LacticOuter] * h / (h + LaneChemistry.LacticConstant(_c,
            celsius))) + (y[State.AceticOuter] * h / (h + _c[MemberConstant.Acetic]));
        return Vector256.Create(1000.0) * (protonated + (h * _c[MemberConstant.FreeHydrogen]));
    }

    private Vector256<double> CentrePh(double hours, Vector256<double> celsius)
    {
        bool first = _before < 0;
        Vector256<double> guess = first ? Vector256.Create(-6 * LaneChemistry.Ln10) : _centreLnH;
        _centreLnH = LaneChemistry.LnHydrogen(_c, guess, LaneGrowth.NativeCentre(_c, hours), _centreLactic, _centreAcetic, celsius, first ? 40 : 2);
        return _centreLnH * Vector256.Create(-1 / LaneChemistry.Ln10);
    }

    private void Watch(double hours, Vector256<double> ph, Vector256<double> centrePh, Vector256<double> acidity, Vector256<double> sourness)
    {
        bool first = _before < 0;
        for (int i = 0; i < _trace.Passages.Count; i++)
        {
            Passage passage = _trace.Passages[i];
            (Vector256<double> from, Vector256<double> to) = passage.Watched switch
            {
                Watched.BrinePh => (_lastPh, ph),
                Watched.CentrePh => (_lastCentrePh, centrePh),
                Watched.Acidity => (_lastAcidity, acidity),
                _ => (_lastSourness, sourness),
            };
            passage.Take(_firstMember, first ? 0 : _before, passage.Signed(first ? to : from), hours, passage.Signed(to));
        }
        (_lastPh, _lastCentrePh, _lastAcidity, _lastSourness) = (ph, centrePh, acidity, sourness);
        _before = hours;
    }

    private readonly Vector256<double> Gas(ReadOnlySpan<Vector256<double>> dy)
    {
        // One carbon dioxide a hexose of the heterofermentative kinds, and nearly all acetic acid is theirs.
        Vector256<double> inside = (Vector256<double>.One - _c[MemberConstant.OuterShare]) / _c[MemberConstant.OuterShare];
        Vector256<double> acetic = dy[State.AceticOuter] + (inside * dy[State.AceticInner]);
        return acetic / _c[MemberConstant.AceticYield] * Vector256.Create(24.0);
    }

    private readonly void Write(double[] quantity, Vector256<double> values)
    {
        int at = (_next * _trace.Members) + _firstMember;
        for (int lane = 0; lane < LaneTable.Lanes && _firstMember + lane < _trace.Members; lane++)
            quantity[at + lane] = values[lane];
    }
}
