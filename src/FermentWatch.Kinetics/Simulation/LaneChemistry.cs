using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace FermentWatch.Kinetics.Simulation;

/// <summary>The charge balance of <see cref="Chemistry.ChargeBalance"/> over eight lanes, from a near guess.</summary>
internal static class LaneChemistry
{
    public const double Ln10 = 2.302585092994046;

    /// <summary>ln H after one or more Newton steps from a guess.</summary>
    /// <param name="c">Constants of the block.</param>
    /// <param name="lnH">The guess: the value of the stage before.</param>
    /// <param name="native">Share of the vegetable's own solutes present, of what evens out at last.</param>
    /// <param name="lactic">mol/L.</param>
    /// <param name="acetic">mol/L.</param>
    /// <param name="celsius">Temperature of the lanes.</param>
    /// <param name="steps">Newton steps.</param>
    public static Vector512<double> LnHydrogen(
        ReadOnlySpan<Vector512<double>> c, Vector512<double> lnH, Vector512<double> native,
        Vector512<double> lactic, Vector512<double> acetic, Vector512<double> celsius, int steps)
    {
        Vector512<double> lacticConstant = LacticConstant(c, celsius);
        Vector512<double> largest = Vector512.Create(1.5);
        for (int i = 0; i < steps; i++)
        {
            Vector512<double> h = LaneMath.Exp(lnH);
            Vector512<double> free = h * c[Slot.FreeHydrogen];
            Vector512<double> hydroxide = c[Slot.Water] / h;
            Vector512<double> own = c[Slot.StrongIons];
            Vector512<double> ownSlope = Vector512<double>.Zero;
            One(c[Slot.SideChain], c[Slot.SideChainTotal], h, ref own, ref ownSlope);
            Two(c[Slot.Malic1], c[Slot.Malic12], c[Slot.MalicTotal], h, ref own, ref ownSlope);
            Two(c[Slot.Phosphoric1], c[Slot.Phosphoric12], c[Slot.PhosphateTotal], h, ref own, ref ownSlope);
            Three(c, h, ref own, ref ownSlope);
            Vector512<double> excess = (native * own) + free - hydroxide;
            Vector512<double> slope = (native * ownSlope) + free + hydroxide;
            One(lacticConstant, lactic, h, ref excess, ref slope);
            One(c[Slot.Acetic], acetic, h, ref excess, ref slope);
            Vector512<double> step = Vector512.Min(Vector512.Max(excess / slope, -largest), largest);
            lnH -= step;
        }
        return lnH;
    }

    /// <summary>The lactic constant at the lanes' temperatures; its exponential written as a series, which ends below 1e-5 within -5 to 45 C.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector512<double> LacticConstant(ReadOnlySpan<Vector512<double>> c, Vector512<double> celsius)
    {
        Vector512<double> off = celsius - Vector512.Create(22.5);
        Vector512<double> d = off * off * Vector512.Create(5e-5 * Ln10);
        return c[Slot.Lactic] * (Vector512<double>.One - (d * (Vector512<double>.One - (d * (Vector512.Create(0.5) - (d * Vector512.Create(1.0 / 6)))))));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void One(Vector512<double> k, Vector512<double> total, Vector512<double> h, ref Vector512<double> excess, ref Vector512<double> slope)
    {
        Vector512<double> charge = k / (k + h);
        Vector512<double> carried = total * charge;
        excess -= carried;
        slope += carried * (Vector512<double>.One - charge);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Two(Vector512<double> k1, Vector512<double> k12, Vector512<double> total, Vector512<double> h, ref Vector512<double> excess, ref Vector512<double> slope)
    {
        Vector512<double> one = k1 * h;
        Vector512<double> inverse = Vector512<double>.One / ((h * h) + one + k12);
        Vector512<double> two = k12 + k12;
        Vector512<double> charge = (one + two) * inverse;
        excess -= total * charge;
        slope += total * (((one + two + two) * inverse) - (charge * charge));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Three(ReadOnlySpan<Vector512<double>> c, Vector512<double> h, ref Vector512<double> excess, ref Vector512<double> slope)
    {
        Vector512<double> one = c[Slot.Citric1] * h * h;
        Vector512<double> two = c[Slot.Citric12] * h;
        Vector512<double> three = c[Slot.Citric123];
        Vector512<double> inverse = Vector512<double>.One / ((h * h * h) + one + two + three);
        Vector512<double> charge = (one + (two * Vector512.Create(2.0)) + (three * Vector512.Create(3.0))) * inverse;
        excess -= c[Slot.CitricTotal] * charge;
        slope += c[Slot.CitricTotal] * (((one + (two * Vector512.Create(4.0)) + (three * Vector512.Create(9.0))) * inverse) - (charge * charge));
    }
}
