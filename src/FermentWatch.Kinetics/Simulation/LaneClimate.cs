using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Kinetics.Simulation;

/// <summary>Temperature of the lanes: each member stands as many standard deviations from the mean as it was dealt.</summary>
internal static class LaneClimate
{
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<double> Celsius(ReadOnlySpan<Vector256<double>> c, double mean, double spread)
    {
        Vector256<double> celsius = Vector256.Create(mean) + (c[Slot.TemperatureDeviate] * Vector256.Create(spread));
        return Vector256.Min(Vector256.Max(celsius, Vector256.Create(TemperatureStep.LowestCelsius)),
            Vector256.Create(TemperatureStep.HighestCelsius));
    }
}
