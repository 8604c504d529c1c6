using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Kinetics.Simulation;

/// <summary>Temperature of the lanes: each member stands as many standard deviations from the mean as it was dealt.</summary>
internal static class LaneClimate
{
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector512<double> Celsius(ReadOnlySpan<Vector512<double>> c, double mean, double spread)
    {
        Vector512<double> celsius = Vector512.Create(mean) + (c[Slot.TemperatureDeviate] * Vector512.Create(spread));
        return Vector512.Min(Vector512.Max(celsius, Vector512.Create(TemperatureStep.LowestCelsius)), Vector512.Create(TemperatureStep.HighestCelsius));
    }
}
