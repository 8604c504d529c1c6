using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace FermentWatch.Kinetics.Simulation;

/// <summary>The charge balance of <see cref="Chemistry.ChargeBalance"/> over four lanes, from a near guess.</summary>
internal static class LaneChemistry
{
    public const double Ln10 = 2.302585092994046;

    private const double SmallStep = 0.06;

    /// <summary>ln H after one or more Newton steps from a guess.</summary>
    /// <param name="c">Constants of the block.</param>
    /// <param name="lnH">The guess: the value of the stage before.</param>
    /// <param name="native">Share of the vegetable's own solutes present, of what evens out at last.</param>
    /// <param name="lactic">mol/L.</param>
    /// <param name="acetic">mol/L.</param>
    /// <param name="celsius">Temperature of the lanes.</param>
    /// <param name="steps">Newton steps.</param>
    public static Vector256<double> LnHydrogen(
        ReadOnlySpan<Vector256<double>> c, Vector256<double> lnH, Vector256<double> native,
        Vector256<double> lactic, Vector256<double> acetic, Vector256<double> celsius, int steps) =>
        LnHydrogen(c, lnH, native, lactic, acetic, celsius, steps, out _);

    /// <summary>The same, and H itself.</summary>
    public static Vector256<double> LnHydrogen(
        ReadOnlySpan<Vector256<double>> c, Vector256<double> lnH, Vector256<double> native,
        Vector256<double> lactic, Vector256<double> acetic, Vector256<double> celsius, int steps, out Vector256<double> h)
    {
        Vector256<double> lacticConstant = LacticConstant(c, celsius);
        Vector256<double> largest = Vector256.Create(1.5);
        h = LaneMath.Exp(lnH);
        for (int i = 0; i < steps; i++)
        {
            Vector256<double> free = h * c[MemberConstant.FreeHydrogen];
            Vector256<double> hydroxide = c[MemberConstant.Water] / h;
            Vector256<double> own = c[MemberConstant.StrongIons];
            Vector256<double> ownSlope = Vector256<double>.Zero;
            One(c[MemberConstant.SideChain], c[MemberConstant.SideChainTotal], h, ref own, ref ownSlope);
            Two(c[MemberConstant.Malic1], c[MemberConstant.Malic12], c[MemberConstant.MalicTotal], h, ref own, ref ownSlope);
            Two(c[MemberConstant.Phosphoric1], c[MemberConstant.Phosphoric12], c[MemberConstant.PhosphateTotal], h, ref own, ref ownSlope);
            Three(c, h, ref own, ref ownSlope);
            Vector256<double> excess = (native * own) + free - hydroxide;
            Vector256<double> slope = (native * ownSlope) + free + hydroxide;
            One(lacticConstant, lactic, h, ref excess, ref slope);
            One(c[MemberConstant.Acetic], acetic, h, ref excess, ref slope);
            Vector256<double> step = Vector256.Min(Vector256.Max(excess / slope, -largest), largest);
            lnH -= step;
            h = Vector256.LessThanAll(Vector256.Abs(step), Vector256.Create(SmallStep)) ? h * NearOne(step) : LaneMath.Exp(lnH);
        }
        return lnH;
    }

    /// <summary>e to minus a small step: what the series leaves out is below 1e-8.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> NearOne(Vector256<double> step)
    {
        Vector256<double> one = Vector256<double>.One;
        return one - (step * (one - (step * (Vector256.Create(0.5) - (step * (Vector256.Create(1.0 / 6) - (step * Vector256.Create(1.0 / 24))))))));
    }

    /// <summary>The lactic constant at the lanes' temperatures; its exponential written as a series, which ends below 1e-5 within -5 to 45
    /// C.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<double> LacticConstant(ReadOnlySpan<Vector256<double>> c, Vector256<double> celsius)
    {
        Vector256<double> off = celsius - Vector256.Create(22.5);
        Vector256<double> d = off * off * Vector256.Create(5e-5 * Ln10);
        return c[MemberConstant.Lactic] * (Vector256<double>.One - (d * (Vector256<double>.One
            - (d * (Vector256.Create(0.5) - (d * Vector256.Create(1.0 / 6)))))));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void One(Vector256<double> k, Vector256<double> total, Vector256<double> h, ref Vector256<double> excess,
        ref Vector256<double> slope)
    {
        Vector256<double> charge = k / (k + h);
        Vector256<double> carried = total * charge;
        excess -= carried;
        slope += carried * (Vector256<double>.One - charge);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Two(Vector256<double> k1, Vector256<double> k12, Vector256<double> total, Vector256<double> h,
        ref Vector256<double> excess, ref Vector256<double> slope)
    {
        Vector256<double> one = k1 * h;
        Vector256<double> inverse = Vector256<double>.One / ((h * h) + one + k12);
        Vector256<double> two = k12 + k12;
        Vector256<double> charge = (one + two) * inverse;
        excess -= total * charge;
        slope += total * (((one + two + two) * inverse) - (charge * charge));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Three(ReadOnlySpan<Vector256<double>> c, Vector256<double> h, ref Vector256<double> excess, ref Vector256<double> slope)
    {
        Vector256<double> one = c[MemberConstant.Citric1] * h * h;
        Vector256<double> two = c[MemberConstant.Citric12] * h;
        Vector256<double> three = c[MemberConstant.Citric123];
        Vector256<double> inverse = Vector256<double>.One / ((h * h * h) + one + two + three);
        Vector256<double> charge = (one + (two * Vector256.Create(2.0)) + (three * Vector256.Create(3.0))) * inverse;
        excess -= c[MemberConstant.CitricTotal] * charge;
        slope += c[MemberConstant.CitricTotal] * (((one + (two * Vector256.Create(4.0)) + (three * Vector256.Create(9.0))) * inverse)
            - (charge * charge));
    }
}
