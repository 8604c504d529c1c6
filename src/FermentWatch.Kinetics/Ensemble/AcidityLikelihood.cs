using FermentWatch.Kinetics.Observation;

namespace FermentWatch.Kinetics.Ensemble;

/// <summary>
/// How likely a titration is where the model says another acidity. A kitchen's burette and end point are taken to be good to
/// 0.05 % and a twentieth of the value: common practice, no source.
/// </summary>
internal static class AcidityLikelihood
{
    private const double LeastPercent = 0.05;
    private const double Share = 0.05;

    /// <summary>Logarithm of the density, without constants that do not depend on the model's acidity.</summary>
    public static double LogDensity(AcidityReading reading, double modelPercent)
    {
        double off = (reading.PercentLactic - modelPercent) / Math.Sqrt((LeastPercent * LeastPercent) + Math.Pow(Share * reading.PercentLactic, 2));
        return -0.5 * off * off;
    }
}
