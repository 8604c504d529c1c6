namespace FermentWatch.Kinetics.Ensemble;

/// <summary>What members differ in: index into a member's standard deviates.</summary>
internal static class Deviate
{
    public const int Rate = 0;
    public const int Starters = 1;
    public const int Finishers = 2;
    public const int Lag = 3;
    public const int Sugar = 4;
    public const int StrongIons = 5;
    public const int NativeAcids = 6;
    public const int Salt = 7;
    public const int Temperature = 8;
    public const int Exchange = 9;
    public const int AcidTolerance = 10;
    public const int PhTolerance = 11;
    public const int Upkeep = 12;

    public const int StarterAcid = 13;

    /// <summary>Pace at the knots of <see cref="Simulation.LanePace"/>.</summary>
    public const int Pace = 14;

    /// <summary>Pace once acid has come.</summary>
    public const int StagePace = 18;

    /// <summary>What the model itself is off by in pH, at the same knots.</summary>
    public const int PhOffset = 19;

    /// <summary>What the model itself is off by in acidity.</summary>
    public const int AcidityOffset = 23;

    /// <summary>The household's liked level; moves no trajectory.</summary>
    public const int Taste = 24;

    /// <summary>Growth of the finishers alone: when they take over.</summary>
    public const int FinisherRate = 25;

    public const int Count = 26;
}

/// <summary>The standard normal distribution.</summary>
internal static class NormalDistribution
{
    /// <summary>Quantile: Wichura 1988, algorithm AS 241 (PPND7), Applied Statistics 37:477-484; about seven digits.</summary>
    public static double Quantile(double p)
    {
        double q = p - 0.5;
        if (Math.Abs(q) <= 0.425)
        {
            double r = 0.180625 - (q * q);
            return q * ((((((59.109374720 * r) + 159.29113202) * r) + 50.434271938) * r) + 3.3871327179)
                / ((((((67.187563600 * r) + 78.757757664) * r) + 17.895169469) * r) + 1.0);
        }
        double tail = Math.Sqrt(-Math.Log(q < 0 ? p : 1 - p));
        double value = tail <= 5 ? Middle(tail - 1.6) : Far(tail - 5);
        return q < 0 ? -value : value;
    }

    /// <summary>
    /// Cumulative probability, by the rational approximation of the error function of Abramowitz and Stegun 1964, 7.1.26
    /// (error below 1.5e-7).
    /// </summary>
    public static double Cumulative(double x)
    {
        double z = Math.Abs(x) / Math.Sqrt(2);
        double t = 1 / (1 + (0.3275911 * z));
        double tail = t * (0.254829592 + (t * (-0.284496736 + (t * (1.421413741 + (t * (-1.453152027 + (t * 1.061405429))))))))
            * Math.Exp(-z * z);
        return x > 0 ? 1 - (0.5 * tail) : 0.5 * tail;
    }

    private static double Middle(double r) =>
        ((((((0.17023821103 * r) + 1.3067284816) * r) + 2.7568153900) * r) + 1.4234372777) / ((((0.12021132975 * r) + 0.73700164250) * r) + 1.0);

    private static double Far(double r) =>
        ((((((0.017337203997 * r) + 0.42868294337) * r) + 3.0812263860) * r) + 6.6579051150) / ((((0.012258202635 * r) + 0.24197894225) * r) + 1.0);
}
