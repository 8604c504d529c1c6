using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Security.Cryptography;
using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Kinetics.Simulation;

/// <summary>
/// Temperature inside a jar: the room followed with the vessel's lag, or the jar's own sensor. Straight lines between
/// quarter hours, with running integrals, so that the mean over any stretch costs the same.
/// </summary>
internal sealed class JarClimate
{
    private const double StepHours = 0.25;

    private readonly double[] _celsius;
    private readonly double[] _spread;
    private readonly double[] _integral;
    private readonly double[] _spreadIntegral;

    private JarClimate(double[] celsius, double[] spread)
    {
        _celsius = celsius;
        _spread = spread;
        _integral = Integral(celsius);
        _spreadIntegral = Integral(spread);
    }

    public static JarClimate Of(TemperatureCourse room, double vesselLitres, double days)
    {
        int nodes = (int)Math.Ceiling(days * TemperatureCourse.StepsPerDay) + 2;
        double[] celsius = new double[nodes];
        double[] spread = new double[nodes];
        double kept = Math.Exp(-StepHours / JarLag.TimeConstantHours(vesselLitres));
        TemperatureStep first = room[0];
        celsius[0] = first.Celsius!.Value;
        spread[0] = first.SpreadCelsius;
        for (int i = 1; i < nodes; i++)
        {
            TemperatureStep step = room[i - 1];
            double outside = step.Celsius!.Value;
            celsius[i] = step.InsideJar ? outside : outside + ((celsius[i - 1] - outside) * kept);
            spread[i] = step.SpreadCelsius;
        }
        return new(celsius, spread);
    }

    /// <summary>Temperature at each quarter hour.</summary>
    public ReadOnlySpan<double> Celsius => _celsius;

    /// <summary>Standard deviation at each quarter hour.</summary>
    public ReadOnlySpan<double> Spread => _spread;

    /// <summary>Mean over a stretch of hours after packing.</summary>
    public double MeanCelsius(double fromHours, double toHours) => Mean(_integral, fromHours, toHours);

    /// <summary>Mean standard deviation over a stretch.</summary>
    public double MeanSpread(double fromHours, double toHours) => Mean(_spreadIntegral, fromHours, toHours);

    /// <summary>Names all that a run until a time looks at: the same name, the same temperatures to the last bit.</summary>
    public string NameUntil(double hours)
    {
        int nodes = Math.Min((int)Math.Ceiling(hours / StepHours) + 1, _celsius.Length);
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(MemoryMarshal.AsBytes(_celsius.AsSpan(0, nodes)));
        hash.AppendData(MemoryMarshal.AsBytes(_spread.AsSpan(0, nodes)));
        return Convert.ToHexString(hash.GetHashAndReset());
    }

    /// <summary>Temperature at a time.</summary>
    public double At(double hours)
    {
        (int i, double share) = Locate(hours);
        return _celsius[i] + (share * (_celsius[i + 1] - _celsius[i]));
    }

    private double Mean(double[] integral, double from, double to) =>
        (Until(integral, to) - Until(integral, from)) / (to - from);

    private double Until(double[] integral, double hours)
    {
        (int i, double share) = Locate(hours);
        // Within a quarter of an hour the temperature is taken as its mean: nobody can tell.
        return integral[i] + (share * (integral[i + 1] - integral[i]));
    }

    private (int Cell, double Share) Locate(double hours)
    {
        double cells = Math.Clamp(hours / StepHours, 0, _celsius.Length - 1);
        int cell = Math.Min((int)cells, _celsius.Length - 2);
        return (cell, cells - cell);
    }

    private static double[] Integral(double[] nodes)
    {
        double[] integral = new double[nodes.Length];
        for (int i = 1; i < nodes.Length; i++)
            integral[i] = integral[i - 1] + (0.5 * StepHours * (nodes[i - 1] + nodes[i]));
        return integral;
    }
}

/// <summary>Temperature of the lanes: each member stands as many standard deviations from the mean as it was dealt.</summary>
internal static class LaneClimate
{
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<double> Celsius(ReadOnlySpan<Vector256<double>> c, double mean, double spread)
    {
        Vector256<double> celsius = Vector256.Create(mean) + (c[MemberConstant.TemperatureDeviate] * Vector256.Create(spread));
        return Vector256.Min(Vector256.Max(celsius, Vector256.Create(TemperatureStep.LowestCelsius)),
            Vector256.Create(TemperatureStep.HighestCelsius));
    }
}
