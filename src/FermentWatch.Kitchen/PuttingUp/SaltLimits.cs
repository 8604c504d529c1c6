using System.Globalization;
using FermentWatch.Kinetics.Recipe;

namespace FermentWatch.Kitchen.PuttingUp;

/// <summary>
/// How much salt a jar or a recipe may have, per cent of vegetables and added water together: what cannot be is refused, what is odd is
/// asked about. From what per cent on it is odd for being much is this project's own figure.
/// </summary>
public static class SaltLimits
{
    private const double OddlySalty = 6;
    private const string GoesSoft = "at 1.7 % or less it goes soft (Univ. of Minnesota Extension; Oregon State SP 50-745)";

    // A per cent that was worked out from a brine or a mass is not refused for its last digit.
    private const double LastDigit = 1e-9;

    /// <summary>Whether there can be so much: nothing to 8 %.</summary>
    public static bool CanBe(double percent) => percent is >= 0 and <= SaltDose.HighestPercent + LastDigit;

    /// <summary>What is asked where it can be and is odd; null where nothing is.</summary>
    /// <param name="main">The vegetable of which there is most.</param>
    /// <param name="percent">Salt, per cent of vegetables and added water.</param>
    /// <param name="saltedGrams">Vegetables and added water, g.</param>
    public static Doubt? Odd(string main, double percent, double saltedGrams)
    {
        if (percent > OddlySalty)
            return new Doubt("salt", Text(
                $"{percent:0.##} % salt is a lot: of vegetables and water together 2 to 3.5 % is usual. Is it that of the brine alone?"));
        if (percent >= SaltRange.LowestFor(main) - LastDigit)
            return null;
        string meant = Plausibility.MeantPercent(percent) is { } slipped ? Text($" Was {slipped:0.##} % meant?")
            : Text($" 2.25 % is {saltedGrams * 0.0225:0.#} g.");
        return new Doubt("salt", Text($"Only {percent:0.##} % of salt? {Meaning(main, percent)}{meant}"));
    }

    private static string Meaning(string main, double percent) => percent < SaltDose.LowestPercent
        ? $"Below 1.5 % the wrong germs may keep up with those that sour: nothing is forecast of such a jar, and {GoesSoft}."
        : $"{SaltRange.Around(main, SaltRange.LowestFor(main)).Source}{(SaltRange.IsKraut(main) ? $"; {GoesSoft}" : "")}.";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
