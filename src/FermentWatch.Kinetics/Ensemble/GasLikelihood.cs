namespace FermentWatch.Kinetics.Ensemble;

/// <summary>
/// How likely bubbles are at a rate of gas. Brine holds some 40 mmol/L of carbon dioxide before any rises; that bubbling is seen
/// above about 3 mmol/L a day is our own reckoning, taken widely.
/// </summary>
internal static class GasLikelihood
{
    private const double HalfSeenMolesPerDay = 0.003;
    private const double LnWidth = 0.7;
    private const double Overlooked = 0.05;

    /// <summary>Logarithm of the probability of seeing, or not seeing, bubbles.</summary>
    public static double LogProbability(bool seen, double molesPerLitreDay)
    {
        double lnRatio = Math.Log(Math.Max(molesPerLitreDay, 1e-9) / HalfSeenMolesPerDay);
        double probability = Overlooked + ((1 - (2 * Overlooked)) / (1 + Math.Exp(-lnRatio / LnWidth)));
        return Math.Log(seen ? probability : 1 - probability);
    }
}
