using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using FermentWatch.Kinetics.Guilds;

namespace FermentWatch.Kinetics.Simulation;

/// <summary>
/// The right-hand side over four lanes. Growth of a guild = optimum rate x temperature (Rosso et al. 1993) x salt x pH
/// x undissociated acid x hexose x lag (Baranyi and Roberts 1994) x room left; acid = growth-linked and maintenance part
/// (Luedeking and Piret 1959); solutes move between pieces and brine by first-order exchange.
/// </summary>
internal static class LaneGrowth
{
    /// <summary>Exponent below which nothing of a difference is left, 1e-9.</summary>
    private const double EvenedOut = -21;

    private static Vector256<double> One => Vector256<double>.One;

    /// <summary>Time derivative per hour at a state; moves ln H along.</summary>
    public static void Derivative(
        ReadOnlySpan<Vector256<double>> c, double hours, Vector256<double> celsius, ReadOnlySpan<Vector256<double>> y,
        Span<Vector256<double>> dy, ref Vector256<double> lnH, int newtonSteps)
    {
        Vector256<double> lactic = Vector256.Max(y[State.LacticOuter], Vector256<double>.Zero);
        Vector256<double> acetic = Vector256.Max(y[State.AceticOuter], Vector256<double>.Zero);
        lnH = LaneChemistry.LnHydrogen(c, lnH, NativeOuter(c, hours), lactic, acetic, celsius, newtonSteps, out Vector256<double> h);
        Vector256<double> acid = Undissociated(c, h, lactic, acetic, celsius);
        Vector256<double> acidCubed = acid * acid * acid;
        Vector256<double> hPower = LaneMath.Exp(c[MemberConstant.PhPower] * lnH);
        Vector256<double> fed = Fed(c, y, lactic, celsius);
        Vector256<double> n0 = LaneMath.Exp(y[State.LnCount]);
        Vector256<double> n1 = LaneMath.Exp(y[State.LnCount + 1]);
        Vector256<double> n2 = LaneMath.Exp(y[State.LnCount + 2]);
        Vector256<double> n3 = LaneMath.Exp(y[State.LnCount + 3]);
        Vector256<double> pace = LanePace.At(c, hours, lactic);
        Vector256<double> used = Vector256<double>.Zero;
        Vector256<double> madeLactic = Vector256<double>.Zero;
        Vector256<double> madeAcetic = Vector256<double>.Zero;
        for (int g = 0; g < ModelParameters.GuildCount; g++)
        {
            Vector256<double> count = g switch { 0 => n0, 1 => n1, 2 => n2, _ => n3 };
            (Vector256<double> top, Vector256<double> bottom) = TemperatureShare(c, g, celsius);
            Vector256<double> inhibition = (One + (hPower * c[MemberConstant.PhFactor + g])) * (One + (acidCubed * c[MemberConstant.AcidFactor + g]));
            Vector256<double> left = y[State.LagLeft + g];
            Vector256<double> lag = One + (c[MemberConstant.LagFactor] * left);
            // One division for the three quotients: temperature, inhibition, lag.
            Vector256<double> part = pace * top / (bottom * inhibition * lag);
            Vector256<double> bearable = fed * part * lag;
            Vector256<double> growth = c[MemberConstant.Rate + g] * fed * part * Room(c, count);
            dy[State.LnCount + g] = growth;
            dy[State.LagLeft + g] = -c[MemberConstant.Rate + g] * part * inhibition * lag * left;
            Vector256<double> eaten = count * ((c[MemberConstant.GrowthHexose + g] * growth) + (c[MemberConstant.Maintenance + g] * bearable));
            used += eaten;
            madeLactic += eaten * c[MemberConstant.LacticYield + g];
            madeAcetic += eaten * c[MemberConstant.AceticYield + g];
        }
        Exchange(c, y, dy, State.HexoseOuter, State.HexoseInner, -used);
        Exchange(c, y, dy, State.LacticOuter, State.LacticInner, madeLactic);
        Exchange(c, y, dy, State.AceticOuter, State.AceticInner, madeAcetic);
    }

    /// <summary>Share of the vegetable's own solutes in the brine, of what evens out at last.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<double> NativeOuter(ReadOnlySpan<Vector256<double>> c, double hours)
    {
        Vector256<double> passed = c[MemberConstant.Exchange] * Vector256.Create(-hours);
        return Vector256.LessThanAll(passed, Vector256.Create(EvenedOut)) ? One : One - ((One - c[MemberConstant.OuterStart]) * LaneMath.Exp(passed));
    }

    /// <summary>The same in the middle of a piece, which follows the mean of the piece as slowly as that follows the brine.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<double> NativeCentre(ReadOnlySpan<Vector256<double>> c, double hours)
    {
        Vector256<double> passed = c[MemberConstant.Exchange] * Vector256.Create(hours);
        return One + ((c[MemberConstant.InnerStart] - One) * (One + passed) * LaneMath.Exp(-passed));
    }

    /// <summary>Undissociated acid, mol/L, acetic by its weight beside lactic.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Undissociated(
        ReadOnlySpan<Vector256<double>> c, Vector256<double> h, Vector256<double> lactic, Vector256<double> acetic, Vector256<double> celsius)
    {
        Vector256<double> lacticBound = h + LaneChemistry.LacticConstant(c, celsius);
        Vector256<double> aceticBound = h + c[MemberConstant.Acetic];
        return h * ((lactic * aceticBound) + (c[MemberConstant.AceticWeight] * acetic * lacticBound)) / (lacticBound * aceticBound);
    }

    /// <summary>Share of the pace that food, lactate of every form and frost leave to all guilds alike.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Fed(
        ReadOnlySpan<Vector256<double>> c, ReadOnlySpan<Vector256<double>> y, Vector256<double> lactic, Vector256<double> celsius)
    {
        Vector256<double> hexose = Vector256.Max(y[State.HexoseOuter], Vector256<double>.Zero);
        // Lactate of every form takes its share beside the undissociated acid (Dalcanton et al. 2018: see growth_rates).
        Vector256<double> unsalted = Vector256.Max(Vector256<double>.Zero, One - (lactic * c[MemberConstant.InverseLacticLimit]));
        // Brine freezes at about -2 C (1.86 C an osmol, two of salt and the sugar: 1.06 osmol/L), and ripe kimchi keeps there (K70).
        Vector256<double> thawed = Vector256.Min(One, Vector256.Max(Vector256<double>.Zero, celsius + Vector256.Create(2.0)));
        return thawed * unsalted * hexose / (hexose + c[MemberConstant.HalfHexose]);
    }

    /// <summary>The temperature's share of the best rate as a quotient, so that one division serves three (Rosso et al. 1993).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static (Vector256<double> Top, Vector256<double> Bottom) TemperatureShare(ReadOnlySpan<Vector256<double>> c, int g,
        Vector256<double> celsius)
    {
        Vector256<double> low = c[MemberConstant.TemperatureMinimum + g];
        Vector256<double> best = c[MemberConstant.TemperatureOptimum + g];
        Vector256<double> high = c[MemberConstant.TemperatureMaximum + g];
        Vector256<double> above = Vector256.Max(celsius - low, Vector256<double>.Zero);
        Vector256<double> below = Vector256.Min(celsius - high, Vector256<double>.Zero);
        Vector256<double> span = best - low;
        Vector256<double> bottom = span * ((span * (celsius - best)) - ((best - high) * (best + low - (celsius + celsius))));
        return (below * above * above, bottom);
    }

    /// <summary>Room left to a guild: its own crowd takes it, for what the guild before it left behind is dead or starves.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Room(ReadOnlySpan<Vector256<double>> c, Vector256<double> crowd) =>
        Vector256.Max(Vector256<double>.Zero, One - (crowd * c[MemberConstant.InverseRoom]));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Exchange(ReadOnlySpan<Vector256<double>> c, ReadOnlySpan<Vector256<double>> y, Span<Vector256<double>> dy, int outer,
        int inner, Vector256<double> made)
    {
        Vector256<double> flow = c[MemberConstant.Exchange] * (y[inner] - y[outer]);
        dy[outer] = (flow * (One - c[MemberConstant.OuterShare])) + made;
        dy[inner] = -flow * c[MemberConstant.OuterShare];
    }
}
