using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace FermentWatch.Kinetics.Simulation;

/// <summary>
/// Elementary functions over four lanes. Written with plain multiplications and additions, no fused ones, so that every
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
    public static Vector256<double> Exp(Vector256<double> x)
    {
        x = Vector256.Min(Vector256.Max(x, Vector256.Create(-700.0)), Vector256.Create(700.0));
        Vector256<double> shifted = (x * Vector256.Create(Log2E)) + Vector256.Create(RoundingShift);
        Vector256<double> n = shifted - Vector256.Create(RoundingShift);
        Vector256<double> r = x - (n * Vector256.Create(Ln2High)) - (n * Vector256.Create(Ln2Low));
        Vector256<double> p = Vector256.Create(1.0 / 5040);
        p = (p * r) + Vector256.Create(1.0 / 720);
        p = (p * r) + Vector256.Create(1.0 / 120);
        p = (p * r) + Vector256.Create(1.0 / 24);
        p = (p * r) + Vector256.Create(1.0 / 6);
        p = (p * r) + Vector256.Create(0.5);
        p = (p * r) + Vector256.Create(1.0);
        p = (p * r) + Vector256.Create(1.0);
        return (p.AsInt64() + (shifted.AsInt64() << 52)).AsDouble();
    }
}
