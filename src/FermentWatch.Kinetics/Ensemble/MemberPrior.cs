namespace FermentWatch.Kinetics.Ensemble;

/// <summary>Prior of the members' deviates: independent normals, standard ones unless a household has taught otherwise.</summary>
internal sealed record MemberPrior(double[] Mean, double[] StandardDeviation)
{
    private const uint OrderPurpose = 1;
    private const uint PlacePurpose = 2;

    /// <summary>The published prior.</summary>
    public static MemberPrior Standard { get; } = new(new double[Deviate.Count], [.. Enumerable.Repeat(1.0, Deviate.Count)]);

    /// <summary>
    /// Deviates of many members, [member x count + deviate], one in each of as many slices of equal probability (Latin
    /// hypercube: McKay, Beckman and Conover 1979, Technometrics 21:239-245).
    /// </summary>
    public double[] Draw(ulong key, int members)
    {
        double[] deviates = new double[members * Deviate.Count];
        double[] order = new double[members];
        int[] slices = new int[members];
        for (int d = 0; d < Deviate.Count; d++)
        {
            for (int m = 0; m < members; m++)
            {
                slices[m] = m;
                order[m] = Philox.Uniform(key, OrderPurpose, (uint)m, (uint)d);
            }
            Array.Sort(order, slices);
            for (int m = 0; m < members; m++)
            {
                double p = (slices[m] + Philox.Uniform(key, PlacePurpose, (uint)m, (uint)d)) / members;
                deviates[(m * Deviate.Count) + d] = Mean[d] + (StandardDeviation[d] * NormalDistribution.Quantile(p));
            }
        }
        return deviates;
    }

    /// <summary>Logarithm of the density, without its constant.</summary>
    public double LogDensity(ReadOnlySpan<double> deviates)
    {
        double sum = 0;
        for (int d = 0; d < deviates.Length; d++)
        {
            double off = (deviates[d] - Mean[d]) / StandardDeviation[d];
            sum -= 0.5 * off * off;
        }
        return sum;
    }
}
