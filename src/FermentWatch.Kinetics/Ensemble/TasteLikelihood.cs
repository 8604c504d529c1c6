using FermentWatch.Kinetics.Observation;

namespace FermentWatch.Kinetics.Ensemble;

/// <summary>
/// How likely a verdict is where the sourness and the household's level are as the model says. Sourness is judged by its
/// ratio to the level; the bounds between the words and the taster's error are our own choice.
/// </summary>
internal static class TasteLikelihood
{
    /// <summary>Standard deviation of a tongue, ln of the sourness index.</summary>
    public const double LnError = 0.2;

    private const double NearlyFrom = -0.35;
    private const double RightFrom = -0.1;
    private const double PastFrom = 0.3;

    /// <summary>Logarithm of the probability of a verdict.</summary>
    /// <param name="verdict">What was said.</param>
    /// <param name="lnRatio">ln of the sourness over the household's level.</param>
    public static double LogProbability(TasteAnswer verdict, double lnRatio)
    {
        (double from, double to) = verdict switch
        {
            TasteAnswer.NotYet => (double.NegativeInfinity, NearlyFrom),
            TasteAnswer.Nearly => (NearlyFrom, RightFrom),
            TasteAnswer.Right => (RightFrom, PastFrom),
            _ => (PastFrom, double.PositiveInfinity),
        };
        double probability = Below(to, lnRatio) - Below(from, lnRatio);
        return Math.Log(Math.Max(probability, 1e-12));
    }

    /// <summary>The verdict a perceived ratio gets.</summary>
    public static TasteAnswer VerdictOf(double perceivedLnRatio) => perceivedLnRatio switch
    {
        < NearlyFrom => TasteAnswer.NotYet,
        < RightFrom => TasteAnswer.Nearly,
        < PastFrom => TasteAnswer.Right,
        _ => TasteAnswer.PastIt,
    };

    private static double Below(double bound, double lnRatio) =>
        double.IsInfinity(bound) ? (bound > 0 ? 1 : 0) : NormalDistribution.Cumulative((bound - lnRatio) / LnError);
}
