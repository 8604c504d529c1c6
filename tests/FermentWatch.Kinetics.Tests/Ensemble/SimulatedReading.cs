using FermentWatch.Kinetics.Ensemble;
using FermentWatch.Kinetics.Observation;

namespace FermentWatch.Kinetics.Tests.Ensemble;

/// <summary>A reading drawn as the likelihood says readings come.</summary>
internal static class SimulatedReading
{
    /// <summary>Share of readings at or above the truth: area of the normal half against that of Student's half, four degrees of freedom.</summary>
    private static readonly double ShareAbove = Math.Sqrt(Math.PI / 2) / (Math.Sqrt(Math.PI / 2) + (4.0 / 3));

    public static double Of(double ph, PhMethod method, ulong key, uint purpose, uint member, uint index)
    {
        double deviation = PhLikelihood.Deviation(method);
        double normal = Philox.Normal(key, purpose, member, index * 10);
        if (method == PhMethod.Strip)
            return 0.3 * Math.Round((ph + (deviation * normal)) / 0.3);
        if (Philox.Uniform(key, purpose, member, (index * 10) + 1) < ShareAbove)
            return ph + (deviation * Math.Abs(normal));
        double chi = Enumerable.Range(2, 4).Sum(i => Math.Pow(Philox.Normal(key, purpose, member, (index * 10) + (uint)i), 2));
        return ph - (deviation * Math.Abs(normal) / Math.Sqrt(chi / 4));
    }
}
