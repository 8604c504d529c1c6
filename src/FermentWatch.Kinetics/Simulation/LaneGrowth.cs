using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using FermentWatch.Kinetics.Guilds;

namespace FermentWatch.Kinetics.Simulation;

/// <summary>
/// The right-hand side over eight lanes. Growth of a guild = optimum rate x temperature (Rosso et al. 1993) x salt x pH
/// x undissociated acid x hexose x lag (Baranyi and Roberts 1994) x room left; acid = growth-linked and maintenance part
/// (Luedeking and Piret 1959); solutes move between pieces and brine by first-order exchange.
/// </summary>
internal static class LaneGrowth
{
    private static Vector512<double> One => Vector512<double>.One;

    /// <summary>Time derivative per hour at a state; moves ln H along.</summary>
    public static void Derivative(
        ReadOnlySpan<Vector512<double>> c, double hours, Vector512<double> celsius, ReadOnlySpan<Vector512<double>> y,
        Span<Vector512<double>> dy, ref Vector512<double> lnH, int newtonSteps)
    {
        Vector512<double> lactic = Vector512.Max(y[State.LacticOuter], Vector512<double>.Zero);
        Vector512<double> acetic = Vector512.Max(y[State.AceticOuter], Vector512<double>.Zero);
        lnH = LaneChemistry.LnHydrogen(c, lnH, NativeOuter(c, hours), lactic, acetic, celsius, newtonSteps);
        Vector512<double> h = LaneMath.Exp(lnH);
        Vector512<double> acid = (lactic * h / (h + LaneChemistry.LacticConstant(c, celsius)))
            + (c[Slot.AceticWeight] * acetic * h / (h + c[Slot.Acetic]));
        Vector512<double> acidCubed = acid * acid * acid;
        Vector512<double> hPower = LaneMath.Exp(c[Slot.PhPower] * lnH);
        Vector512<double> hexose = Vector512.Max(y[State.HexoseOuter], Vector512<double>.Zero);
        // Lactate of every form takes its share beside the undissociated acid (Dalcanton et al. 2018: see growth_rates).
        Vector512<double> unsalted = Vector512.Max(Vector512<double>.Zero, One - (lactic * c[Slot.InverseLacticLimit]));
        // Brine freezes at about -2 C (1.86 C an osmol, two of salt and the sugar: 1.06 osmol/L), and ripe kimchi keeps there (K70).
        Vector512<double> thawed = Vector512.Min(One, Vector512.Max(Vector512<double>.Zero, celsius + Vector512.Create(2.0)));
        Vector512<double> fed = thawed * unsalted * hexose / (hexose + c[Slot.HalfHexose]);

        Vector512<double> n0 = LaneMath.Exp(y[State.LnCount]);
        Vector512<double> n1 = LaneMath.Exp(y[State.LnCount + 1]);
        Vector512<double> n2 = LaneMath.Exp(y[State.LnCount + 2]);
        Vector512<double> n3 = LaneMath.Exp(y[State.LnCount + 3]);
        Vector512<double> room = Vector512.Max(Vector512<double>.Zero, One - ((n0 + n1 + n2 + n3) * c[Slot.InverseCrowding]));

        Vector512<double> used = Vector512<double>.Zero;
        Vector512<double> madeLactic = Vector512<double>.Zero;
        Vector512<double> madeAcetic = Vector512<double>.Zero;
        for (int g = 0; g < ModelParameters.GuildCount; g++)
        {
            Vector512<double> warmth = TemperatureShare(c, g, celsius);
            Vector512<double> bearable = fed * warmth / ((One + (hPower * c[Slot.PhFactor + g])) * (One + (acidCubed * c[Slot.AcidFactor + g])));
            Vector512<double> left = y[State.LagLeft + g];
            Vector512<double> growth = c[Slot.Rate + g] * bearable * room / (One + (c[Slot.LagFactor] * left));
            dy[State.LnCount + g] = growth;
            dy[State.LagLeft + g] = -c[Slot.Rate + g] * warmth * left;
            Vector512<double> count = g switch { 0 => n0, 1 => n1, 2 => n2, _ => n3 };
            Vector512<double> eaten = count * ((c[Slot.GrowthHexose + g] * growth) + (c[Slot.Maintenance + g] * bearable));
            used += eaten;
            madeLactic += eaten * c[Slot.LacticYield + g];
            madeAcetic += eaten * c[Slot.AceticYield + g];
        }
        Exchange(c, y, dy, State.HexoseOuter, State.HexoseInner, -used);
        Exchange(c, y, dy, State.LacticOuter, State.LacticInner, madeLactic);
        Exchange(c, y, dy, State.AceticOuter, State.AceticInner, madeAcetic);
    }

    /// <summary>Share of the vegetable's own solutes in the brine, of what evens out at last.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector512<double> NativeOuter(ReadOnlySpan<Vector512<double>> c, double hours) =>
        One - ((One - c[Slot.OuterStart]) * LaneMath.Exp(c[Slot.Exchange] * Vector512.Create(-hours)));

    /// <summary>The same in the middle of a piece, which follows the mean of the piece as slowly as that follows the brine.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector512<double> NativeCentre(ReadOnlySpan<Vector512<double>> c, double hours)
    {
        Vector512<double> passed = c[Slot.Exchange] * Vector512.Create(hours);
        return One + ((c[Slot.InnerStart] - One) * (One + passed) * LaneMath.Exp(-passed));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> TemperatureShare(ReadOnlySpan<Vector512<double>> c, int g, Vector512<double> celsius)
    {
        Vector512<double> low = c[Slot.TemperatureMinimum + g];
        Vector512<double> best = c[Slot.TemperatureOptimum + g];
        Vector512<double> high = c[Slot.TemperatureMaximum + g];
        Vector512<double> above = Vector512.Max(celsius - low, Vector512<double>.Zero);
        Vector512<double> below = Vector512.Min(celsius - high, Vector512<double>.Zero);
        Vector512<double> span = best - low;
        Vector512<double> bottom = span * ((span * (celsius - best)) - ((best - high) * (best + low - (celsius + celsius))));
        return below * above * above / bottom;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Exchange(ReadOnlySpan<Vector512<double>> c, ReadOnlySpan<Vector512<double>> y, Span<Vector512<double>> dy, int outer, int inner, Vector512<double> made)
    {
        Vector512<double> flow = c[Slot.Exchange] * (y[inner] - y[outer]);
        dy[outer] = (flow * (One - c[Slot.OuterShare])) + made;
        dy[inner] = -flow * c[Slot.OuterShare];
    }
}
