namespace FermentWatch.Kinetics.Recipe;

/// <summary>Salt as per cent of vegetables and added water together, and how well it is known.</summary>
/// <param name="Percent">Best estimate, per cent.</param>
/// <param name="StandardDeviationPercent">Standard deviation of the estimate, percentage points, zero or more.</param>
public sealed record SaltDose(double Percent, double StandardDeviationPercent)
{
    /// <summary>Least salt that gets a forecast, per cent.</summary>
    public const double LowestPercent = 1.5;

    /// <summary>Most salt that gets a forecast, per cent.</summary>
    public const double HighestPercent = 8.0;

    /// <summary>Salted by taste: 1.5 to 3.5 %, taken as the 95 % range of a normal distribution.</summary>
    public static SaltDose ByTaste { get; } = new(2.5, 0.5);

    /// <summary>Salt and vegetables weighed: known to about a twentieth.</summary>
    public static SaltDose Weighed(double percent) => new(percent, 0.05 * percent);

    /// <summary>Salt by the spoon: the same words mean amounts that differ by half (see the salt measures).</summary>
    public static SaltDose BySpoon(double percent) => new(percent, 0.15 * percent);
}
