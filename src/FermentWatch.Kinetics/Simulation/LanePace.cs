using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace FermentWatch.Kinetics.Simulation;

/// <summary>
/// The random course of each member's own pace: a straight line in its logarithm between days of packing, and beside it what the
/// stage of acid does to it. Growth, upkeep and lag go at this pace.
/// </summary>
internal static class LanePace
{
    /// <summary>Knots of what runs along straight lines; the last value stays.</summary>
    public const int Knots = 4;

    /// <summary>Lactate at which half of the stage's part has come, mol/L: the fall of the pH lies about it.</summary>
    private const double HalfStageMoles = 0.005;

    /// <summary>Seven times as fast or as slow is as far as a jar is believed to go.</summary>
    private const double MostLn = 2;

    /// <summary>Hours of the knots: days 0, 2, 6 and 16.</summary>
    private static ReadOnlySpan<double> Hours => [0, 48, 144, 384];

    /// <summary>Pace of the lanes at a time and a lactate.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<double> At(ReadOnlySpan<Vector256<double>> c, double hours, Vector256<double> lactic)
    {
        Vector256<double> ln = Line(c, MemberConstant.LnPace, hours) + (c[MemberConstant.LnStagePace] * lactic / (lactic
            + Vector256.Create(HalfStageMoles)));
        return LaneMath.Exp(Vector256.Min(Vector256.Max(ln, Vector256.Create(-MostLn)), Vector256.Create(MostLn)));
    }

    /// <summary>Value at a time of what is given at the knots.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<double> Line(ReadOnlySpan<Vector256<double>> c, int firstSlot, double hours)
    {
        if (hours >= Hours[Knots - 1])
            return c[firstSlot + Knots - 1];
        int knot = hours < Hours[1] ? 0 : hours < Hours[2] ? 1 : 2;
        Vector256<double> share = Vector256.Create((hours - Hours[knot]) / (Hours[knot + 1] - Hours[knot]));
        return c[firstSlot + knot] + (share * (c[firstSlot + knot + 1] - c[firstSlot + knot]));
    }
}
