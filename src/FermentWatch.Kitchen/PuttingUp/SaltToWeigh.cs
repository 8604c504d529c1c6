using System.Globalization;
using FermentWatch.Kinetics.Salt;
using FermentWatch.Kitchen.Words;

namespace FermentWatch.Kitchen.PuttingUp;

/// <summary>What per cent of salt are said of.</summary>
public enum SaltBasis
{
    /// <summary>Vegetables and added water together, as it will even out in the jar.</summary>
    VegetablesAndWater = 1,

    /// <summary>The vegetables alone.</summary>
    Vegetables = 2,

    /// <summary>The brine that is poured on: all the salt goes into the added water.</summary>
    Brine = 3,
}

/// <summary>The salt for one jar by weight, and how far spoons lie.</summary>
/// <param name="Grams">Salt to weigh, g.</param>
/// <param name="Percent">The same as per cent of vegetables and added water together.</param>
public sealed record SaltToWeigh(double Grams, double Percent)
{
    /// <summary>Works it out.</summary>
    /// <param name="percent">Per cent, of what <paramref name="basis"/> says; by mass of the brine for a brine.</param>
    /// <param name="basis">What they are of.</param>
    /// <param name="vegetablesKilograms">Prepared vegetables in the jar, above 0.</param>
    /// <param name="waterKilograms">Water added to it; a brine needs some.</param>
    public static SaltToWeigh Of(double percent, SaltBasis basis, double vegetablesKilograms, double waterKilograms)
    {
        double grams = basis switch
        {
            SaltBasis.Vegetables => SaltArithmetic.GramsFor(vegetablesKilograms, 0, percent),
            SaltBasis.Brine => SaltArithmetic.GramsForBrine(1000 * waterKilograms, percent),
            _ => SaltArithmetic.GramsFor(vegetablesKilograms, waterKilograms, percent),
        };
        return new SaltToWeigh(grams, SaltArithmetic.PercentFrom(grams, vegetablesKilograms, waterKilograms));
    }

    /// <summary>To be weighed: <c>27 g salt</c>, below ten grams to the half.</summary>
    public string Words => string.Create(CultureInfo.InvariantCulture, $"{(Grams < 10 ? Math.Round(2 * Grams) / 2 : Math.Round(Grams)):0.#} g salt");

    /// <summary>By the spoon, and how far that lies (<see cref="SpoonMeasure"/>).</summary>
    public string Spoons
    {
        get
        {
            SpoonMeasure canning = SpoonMeasure.Of(SaltKind.CanningOrPickling);
            double tablespoons = Grams / canning.TypicalGrams;
            return string.Create(CultureInfo.InvariantCulture,
                $"about {SpoonWords.Of(tablespoons)}: by the spoon {tablespoons * canning.LowGrams:0} to {tablespoons * canning.HighGrams:0} g");
        }
    }
}
