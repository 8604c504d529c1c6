using System.Globalization;
using FermentWatch.Kinetics;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Kitchen.Typed;

namespace FermentWatch.Kitchen.Recipes;

/// <summary>What a recipe may be, whether it was typed here or came as a file: refused and asked about as a jar is that is put up by it.</summary>
public static class MixtureRules
{
    /// <summary>Most vegetables, most seasonings and most allergens of one recipe; letters of a part's name and of its note.</summary>
    public const int MostVegetables = 10, MostSeasonings = 20, MostAllergens = 20, LongestPart = 40, LongestPartNote = 200;

    /// <summary>What is said in shares is kept as grams of a kilogram.</summary>
    public const double GramsOfAllShares = 1000;

    private const double SharesMayMissPercent = 0.5;
    private const double MostGrams = 250_000, LeastGrams = 0.01, MostLiquidGrams = 25_000;

    /// <summary>Everything that is wrong with it; fields by their names in the file, such as <c>vegetables[0].grams</c>.</summary>
    public static IEnumerable<Refusal> Check(string name, Mixture mixture) =>
    [
        .. Maybe(SafeText.WrongName("name", name)), .. CheckCounts(mixture), .. CheckParts("vegetables", mixture.Vegetables),
        .. CheckParts("seasonings", mixture.Seasonings), .. Within("water_grams", mixture.WaterGrams, 0, MostGrams, "g"),
        .. Within("vinegar_grams", mixture.VinegarGrams, 0, MostLiquidGrams, "g"), .. Within("vinegar_percent", mixture.VinegarPercent, 1, 25, "%"),
        .. Within("starter_brine_grams", mixture.StarterGrams, 0, MostLiquidGrams, "g"),
        .. CheckAllergens(mixture.Allergens), .. Maybe(SafeText.WrongNote("note", mixture.Note)), .. CheckSalt(mixture), .. CheckSourness(mixture),
    ];

    /// <summary>What is asked about a mixture that may be, as it is asked about a jar that is put up by it; null where nothing is.</summary>
    public static Doubt? Odd(Mixture mixture) =>
        SaltLimits.Odd(mixture.Vegetables.MaxBy(part => part.Grams)!.Name, mixture.Salt.Percent, mixture.SaltedGrams);

    /// <summary>What is wrong with the shares of a recipe: all its parts are said in shares that make a whole, or none; null where nothing
    /// is.</summary>
    /// <param name="field">The field that is named.</param>
    /// <param name="areShares">Of each part, and of each liquid that there is, whether it was a share.</param>
    /// <param name="mixture">With shares as grams of <see cref="GramsOfAllShares"/>.</param>
    public static Refusal? WrongShares(string field, IReadOnlyCollection<bool> areShares, Mixture mixture)
    {
        double percent = mixture.TotalGrams / GramsOfAllShares * 100;
        return !areShares.Contains(true) ? null
            : areShares.Contains(false) ? new Refusal(field, "shares beside masses", "masses or shares for all parts and liquids would be right")
            : Math.Abs(percent - 100) <= SharesMayMissPercent ? null
            : new Refusal(field, Text(percent, "% in all"), "shares of all parts, water, vinegar and brine that make 100 % together would be right");
    }

    private static IEnumerable<Refusal> CheckCounts(Mixture mixture)
    {
        (string Field, int Count, int Least, int Most)[] all =
        [
            ("vegetables", mixture.Vegetables.Count, 1, MostVegetables), ("seasonings", mixture.Seasonings.Count, 0, MostSeasonings),
            ("allergens", mixture.Allergens.Count, 0, MostAllergens),
        ];
        return all.Where(each => each.Count < each.Least || each.Count > each.Most)
            .Select(each => new Refusal(each.Field, $"{each.Count} of them", $"{each.Least} to {each.Most} would be right"));
    }

    private static IEnumerable<Refusal> CheckParts(string list, IReadOnlyList<MixturePart> parts) =>
        parts.SelectMany((part, index) => CheckPart(string.Create(CultureInfo.InvariantCulture, $"{list}[{index}]"), part));

    private static IEnumerable<Refusal> CheckPart(string path, MixturePart part)
    {
        if (SafeText.WrongName($"{path}.name", part.Name, LongestPart) is { } wrong)
            yield return wrong;
        else if (RefusedIngredient.TryFindReason(part.Name, out string? reason))
            yield return new Refusal($"{path}.name", part.Name, $"leave it out: {reason}");
        else if (part.Name.Any(letter => !char.IsLetter(letter) && letter is not (' ' or '\'' or '’')))
            // The put-up form has name and mass in one line; what could be read as a mass cannot be part of a name.
            yield return new Refusal($"{path}.name", part.Name, "letters and blanks would be right; the rest belongs into its note");
        foreach (Refusal refusal in Within($"{path}.grams", part.Grams, LeastGrams, MostGrams, "g"))
            yield return refusal;
        if (part.Note.Length > LongestPartNote || SafeText.HasHiddenSigns(part.Note))
            yield return new Refusal($"{path}.note", $"a note of {part.Note.Length} letters", $"at most {LongestPartNote} letters in one line "
                + "would be right");
    }

    private static IEnumerable<Refusal> CheckAllergens(IReadOnlyList<string> allergens) => allergens.SelectMany((allergen, index) =>
        Maybe(SafeText.WrongName(string.Create(CultureInfo.InvariantCulture, $"allergens[{index}]"), allergen, LongestPart)));

    /// <summary>As a jar is refused that is put up with so much.</summary>
    private static IEnumerable<Refusal> CheckSalt(Mixture mixture)
    {
        if (mixture.SaltOf == SaltBasis.Brine && !(mixture.WaterGrams > 0))
        {
            yield return new Refusal("water_grams", "0 g", "how much water the salt is dissolved in would be right: the salt is said of the brine");
            yield break;
        }
        if (mixture.Vegetables.Count == 0 || !(mixture.SolidGrams is > 0 and <= 1e6) || !(mixture.WaterGrams is >= 0 and <= MostGrams))
            yield break;
        double percent = mixture.SaltPercent is >= 0 and <= Kinetics.Salt.SaltArithmetic.MostPercent ? mixture.Salt.Percent : double.NaN;
        if (!SaltLimits.CanBe(percent))
            yield return new Refusal("salt_percent", Came(mixture, percent),
                "1.5 to 8 % of vegetables and added water together would be right: with more salt the lactic acid bacteria hardly work");
    }

    private static string Came(Mixture mixture, double percent) =>
        mixture.SaltOf == SaltBasis.VegetablesAndWater || double.IsNaN(percent) ? Text(mixture.SaltPercent, "%")
            : $"{Text(mixture.SaltPercent, "%")}, which is {Text(percent, "%")} of vegetables and added water together";

    private static IEnumerable<Refusal> CheckSourness(Mixture mixture)
    {
        string main = mixture.Vegetables is [var first, ..] ? first.Name : "";
        IReadOnlyList<SournessLevel> reached = SournessLevel.ReachedBy(main);
        if (reached.All(level => level.Step != mixture.Sourness))
            yield return new Refusal("sourness", mixture.Sourness.ToString(), string.Create(CultureInfo.InvariantCulture,
                $"{main} ends near {SournessLevel.EndOf(main):0.##} % acid: "
                + $"{string.Join(" or ", reached.Select(level => level.Step))} would be right"));
    }

    private static IEnumerable<Refusal> Within(string field, double value, double low, double high, string unit)
    {
        if (!(value >= low && value <= high))
            yield return new Refusal(field, Text(value, unit), string.Create(CultureInfo.InvariantCulture, $"{low} to {high} {unit} would be right"));
    }

    private static string Text(double value, string unit) => string.Create(CultureInfo.InvariantCulture, $"{value:0.###} {unit}");

    private static IEnumerable<Refusal> Maybe(Refusal? refusal) => refusal is null ? [] : [refusal];
}
