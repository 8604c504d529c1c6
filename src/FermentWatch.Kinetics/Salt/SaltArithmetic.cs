namespace FermentWatch.Kinetics.Salt;

/// <summary>Salt by weight. Per cent is always of vegetables and added water together, as it will even out in the jar.</summary>
public static class SaltArithmetic
{
    /// <summary>Grams of salt for so much produce and added water at so many per cent of both together.</summary>
    public static double GramsFor(double produceKilograms, double addedWaterKilograms, double percent) =>
        10 * Checked(percent, nameof(percent), 0, 26) * TotalKilograms(produceKilograms, addedWaterKilograms);

    /// <summary>Per cent of produce and added water that so many grams are.</summary>
    public static double PercentFrom(double saltGrams, double produceKilograms, double addedWaterKilograms) =>
        Checked(saltGrams, nameof(saltGrams), 0, 1e6) / (10 * TotalKilograms(produceKilograms, addedWaterKilograms));

    /// <summary>Per cent by mass of a brine made of so much salt and so much water (or water and vinegar, or all that it evens out in).</summary>
    public static double BrinePercentByMass(double saltGrams, double liquidGrams) =>
        100 * Checked(saltGrams, nameof(saltGrams), 0, 1e6) / (saltGrams + Checked(liquidGrams, nameof(liquidGrams), 1e-6, 1e9));

    /// <summary>Grams of salt to dissolve in so much water for a brine of so many per cent by mass.</summary>
    public static double GramsForBrine(double waterGrams, double percentByMass) =>
        Checked(waterGrams, nameof(waterGrams), 0, 1e9) * Checked(percentByMass, nameof(percentByMass), 0, 26) / (100 - percentByMass);

    private static double TotalKilograms(double produce, double water)
    {
        double total = Checked(produce, nameof(produce), 0, 1000) + Checked(water, nameof(water), 0, 1000);
        return total > 0 ? total : throw new ArgumentOutOfRangeException(nameof(produce), produce, "produce and water together must be above 0 kg");
    }

    private static double Checked(double value, string name, double low, double high) =>
        value >= low && value <= high ? value : throw new ArgumentOutOfRangeException(name, value, $"{low} to {high} is taken");
}
