using FermentWatch.Kinetics.Observation;

namespace FermentWatch.Kinetics.Ensemble;

/// <summary>
/// How likely a pH reading is where the model says another. Around the model's value lies the error of the method and the
/// model's own. A reading that is better news than expected may be a slip and has a heavy tail (Student's t, four degrees
/// of freedom); one that is worse news is never discounted: its tail is normal.
/// </summary>
internal static class PhLikelihood
{
    /// <summary>What the model is off by at one time and no longer at the next, pH; what stays is a deviate of the members.</summary>
    private const double ModelError = 0.07;

    private const double Freedom = 4;

    /// <summary>Half a step of a strip's colour scale.</summary>
    private const double HalfStripStep = 0.15;

    /// <summary>Standard deviation of a reading around the model's pH.</summary>
    public static double Deviation(PhMethod method)
    {
        double own = method switch { PhMethod.Meter => 0.05, PhMethod.Probe => 0.1, _ => 0.3 };
        return Math.Sqrt((own * own) + (ModelError * ModelError));
    }

    /// <summary>Logarithm of the density, without constants that do not depend on the model's pH.</summary>
    public static double LogDensity(PhReading reading, double modelPh)
    {
        double deviation = Deviation(reading.Method);
        double off = (reading.Ph - modelPh) / deviation;
        if (reading.Method == PhMethod.Strip)
        {
            // A strip says only between which two colours it lies.
            double half = HalfStripStep / deviation;
            return Math.Log(Math.Max(Probability(off - half, off + half), 1e-300));
        }
        return off >= 0 ? -0.5 * off * off : -0.5 * (Freedom + 1) * Math.Log(1 + (off * off / Freedom));
    }

    private static double Probability(double from, double to) =>
        from > 0 ? NormalDistribution.Cumulative(-from) - NormalDistribution.Cumulative(-to)
            : NormalDistribution.Cumulative(to) - NormalDistribution.Cumulative(from);
}

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
