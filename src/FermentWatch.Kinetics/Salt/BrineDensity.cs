namespace FermentWatch.Kinetics.Salt;

/// <summary>
/// Density of sodium chloride solutions at 20 C, interpolated between the rows of Poradnik fizykochemiczny 1974
/// (physico-chemical handbook, NaCl table). The row at 2 % is 1012.5: the page prints 1012.2, which its own 20.250 g/L contradicts.
/// </summary>
public static class BrineDensity
{
    /// <summary>Molar mass of sodium chloride, g/mol.</summary>
    public const double MolarMassGrams = 58.443;

    private const double PureWater = 998.2;

    private static readonly (double Percent, double Density)[] Rows =
    [
        (0, PureWater), (1, 1005.3), (2, 1012.5), (4, 1026.8), (6, 1041.3), (8, 1055.9), (10, 1070.7), (12, 1085.7),
        (14, 1100.9), (16, 1116.2), (18, 1131.9), (20, 1147.8), (22, 1164.0), (24, 1180.4), (26, 1197.2),
    ];

    /// <summary>Density at 20 C, kg/m3 (g/L), of a brine of 0 to 26 % salt by mass.</summary>
    public static double KilogramsPerCubicMetre(double percentByMass)
    {
        if (!(percentByMass >= 0 && percentByMass <= 26))
            throw new ArgumentOutOfRangeException(nameof(percentByMass), percentByMass, "0 to 26 % by mass is taken");
        return Interpolated(percentByMass);
    }

    /// <summary>Between two rows; beyond the last as between the last two.</summary>
    internal static double Interpolated(double percentByMass)
    {
        int upper = 1;
        while (upper < Rows.Length - 1 && Rows[upper].Percent < percentByMass)
            upper++;
        (double lowPercent, double low) = Rows[upper - 1];
        (double highPercent, double high) = Rows[upper];
        return low + ((high - low) * (percentByMass - lowPercent) / (highPercent - lowPercent));
    }

    /// <summary>Grams of salt in a litre of brine at 20 C.</summary>
    public static double GramsPerLitre(double percentByMass) => percentByMass / 100 * KilogramsPerCubicMetre(percentByMass);

    /// <summary>Moles of salt in a litre of brine at 20 C.</summary>
    public static double MolesPerLitre(double percentByMass) => GramsPerLitre(percentByMass) / MolarMassGrams;
}

/// <summary>Salt by weight. Per cent is always of vegetables and added water together, as it will even out in the jar.</summary>
public static class SaltArithmetic
{
    /// <summary>The most that is taken, per cent: near what water holds.</summary>
    public const double MostPercent = 26;

    /// <summary>Grams of salt for so much produce and added water at so many per cent of both together.</summary>
    public static double GramsFor(double produceKilograms, double addedWaterKilograms, double percent) =>
        10 * Checked(percent, nameof(percent), 0, MostPercent) * TotalKilograms(produceKilograms, addedWaterKilograms);

    /// <summary>Per cent of produce and added water that so many grams are.</summary>
    public static double PercentFrom(double saltGrams, double produceKilograms, double addedWaterKilograms) =>
        Checked(saltGrams, nameof(saltGrams), 0, 1e6) / (10 * TotalKilograms(produceKilograms, addedWaterKilograms));

    /// <summary>Per cent by mass of a brine made of so much salt and so much water (or water and vinegar, or all that it evens out in).</summary>
    public static double BrinePercentByMass(double saltGrams, double liquidGrams) =>
        100 * Checked(saltGrams, nameof(saltGrams), 0, 1e6) / (saltGrams + Checked(liquidGrams, nameof(liquidGrams), 1e-6, 1e9));

    /// <summary>Grams of salt to dissolve in so much water for a brine of so many per cent by mass.</summary>
    public static double GramsForBrine(double waterGrams, double percentByMass) =>
        Checked(waterGrams, nameof(waterGrams), 0, 1e9) * Checked(percentByMass, nameof(percentByMass), 0, MostPercent) / (100 - percentByMass);

    private static double TotalKilograms(double produce, double water)
    {
        double total = Checked(produce, nameof(produce), 0, 1000) + Checked(water, nameof(water), 0, 1000);
        return total > 0 ? total : throw new ArgumentOutOfRangeException(nameof(produce), produce, "produce and water together must be above 0 kg");
    }

    private static double Checked(double value, string name, double low, double high) =>
        value >= low && value <= high ? value : throw new ArgumentOutOfRangeException(name, value, $"{low} to {high} is taken");
}
