using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace FermentWatch.Kinetics.Simulation;

/// <summary>
/// Elementary functions over eight lanes. Written with plain multiplications and additions, no fused ones, so that every
/// machine computes the same bits.
/// </summary>
internal static class LaneMath
{
    private const double Log2E = 1.4426950408889634;
    private const double Ln2High = 0.6931471803691238;
    private const double Ln2Low = 1.9082149292705877e-10;

    /// <summary>Adding this leaves the nearest whole number in the low bits of the sum.</summary>
    private const double RoundingShift = 6755399441055744.0;

    /// <summary>
    /// e to the x, relative error below 1e-8 for -700 to 700 (clamped beyond): reduction by powers of two and the Taylor
    /// series to the seventh power on plus or minus ln 2 / 2.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector512<double> Exp(Vector512<double> x)
    {
        x = Vector512.Min(Vector512.Max(x, Vector512.Create(-700.0)), Vector512.Create(700.0));
        Vector512<double> shifted = (x * Vector512.Create(Log2E)) + Vector512.Create(RoundingShift);
        Vector512<double> n = shifted - Vector512.Create(RoundingShift);
        Vector512<double> r = x - (n * Vector512.Create(Ln2High)) - (n * Vector512.Create(Ln2Low));
        Vector512<double> p = Vector512.Create(1.0 / 5040);
        p = (p * r) + Vector512.Create(1.0 / 720);
        p = (p * r) + Vector512.Create(1.0 / 120);
        p = (p * r) + Vector512.Create(1.0 / 24);
        p = (p * r) + Vector512.Create(1.0 / 6);
        p = (p * r) + Vector512.Create(0.5);
        p = (p * r) + Vector512.Create(1.0);
        p = (p * r) + Vector512.Create(1.0);
        return (p.AsInt64() + (shifted.AsInt64() << 52)).AsDouble();
    }
}
