using System.Globalization;
using System.Text.RegularExpressions;
using FermentWatch.Kinetics;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Salt;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Kitchen.Typed;

namespace FermentWatch.Kitchen.Recipes;

/// <summary>A recipe as it is typed.</summary>
public sealed record RecipeForm
{
    public string? Name { get; init; }

    /// <summary>Vegetables, one a line: name, mass or share, and how it is prepared in brackets (<c>carrot 100 g (grated)</c>).</summary>
    public string? Vegetables { get; init; }

    /// <summary>Seasonings, likewise.</summary>
    public string? Seasonings { get; init; }

    /// <summary>Water that is added, by mass or share; empty is none.</summary>
    public string? Water { get; init; }

    /// <summary>Vinegar, by mass, volume or share; empty is none.</summary>
    public string? Vinegar { get; init; }

    /// <summary>Its acetic acid, per cent; empty is 5, as table vinegar has.</summary>
    public string? VinegarStrength { get; init; }

    /// <summary>Brine of an earlier jar, by mass or share; empty is none.</summary>
    public string? StarterBrine { get; init; }

    /// <summary>Salt, per cent.</summary>
    public string? Salt { get; init; }

    /// <summary>What they are of, a name of <see cref="SaltBasis"/>; empty is vegetables and added water together.</summary>
    public string? SaltOf { get; init; }

    /// <summary>A name of <see cref="Jars.Sourness"/>; empty is as usual for the vegetable.</summary>
    public string? Sourness { get; init; }

    /// <summary>A name of <see cref="Cut"/>; empty is as usual for the vegetable.</summary>
    public string? Cut { get; init; }

    /// <summary>Allergens, a comma between; those that names tell are known without.</summary>
    public string? Allergens { get; init; }

    public string? Note { get; init; }

    /// <summary>Says that what looks odd is right.</summary>
    public bool ItIsRight { get; init; }

    /// <summary>A recipe as the form that would write it.</summary>
    public static RecipeForm Of(string name, Mixture mixture, MassUnit unit) => new()
    {
        Name = name, Vegetables = Lines(mixture.Vegetables, unit), Seasonings = Lines(mixture.Seasonings, unit),
        Water = mixture.WaterGrams > 0 ? Mass(mixture.WaterGrams, unit) : "", Salt = Percent(mixture.SaltPercent), SaltOf = mixture.SaltOf.ToString(),
        Vinegar = mixture.VinegarGrams > 0 ? Mass(mixture.VinegarGrams, unit) : "",
        VinegarStrength = mixture.VinegarGrams > 0 ? Percent(mixture.VinegarPercent) : "",
        StarterBrine = mixture.StarterGrams > 0 ? Mass(mixture.StarterGrams, unit) : "",
        Sourness = mixture.Sourness.ToString(), Cut = mixture.Cut.ToString(), Allergens = string.Join(", ", mixture.Allergens), Note = mixture.Note,
    };

    /// <summary>What a jar was put up with, to be kept as a recipe.</summary>
    public static RecipeForm Of(Jar jar, MassUnit unit)
    {
        ILookup<bool, MixturePart> parts = jar.Portions.Select((portion, index) => (Part: new MixturePart(portion.Produce,
            1000 * portion.MassKilograms),
            IsVegetable: index == 0 || Vegetable.TryFind(portion.Produce, out _))).ToLookup(each => each.IsVegetable, each => each.Part);
        return new RecipeForm
        {
            Name = jar.Name, Vegetables = Lines([.. parts[true]], unit), Seasonings = Lines([.. parts[false]], unit),
            Water = jar.AddedWaterKilograms > 0 ? Mass(1000 * jar.AddedWaterKilograms, unit) : "",
            Vinegar = jar.Vinegar is { } vinegar ? Mass(1000 * vinegar.MassKilograms, unit) : "",
            VinegarStrength = jar.Vinegar is { } strong ? Percent(strong.AceticPercent) : "",
            StarterBrine = jar.Starter is { } starter ? Mass(1000 * starter.MassKilograms, unit) : "",
            Salt = jar.Salting.Percent is { } percent ? Percent(percent) : "", SaltOf = nameof(SaltBasis.VegetablesAndWater),
            Sourness = jar.Target.ToString(), Cut = jar.Cut.ToString(),
        };
    }

    private static string Lines(IReadOnlyList<MixturePart> parts, MassUnit unit) => string.Join('\n', parts.Select(part =>
        $"{part.Name} {Mass(part.Grams, unit)}{(part.Note.Length > 0 ? $" ({part.Note})" : "")}"));

    private static string Percent(double percent) => string.Create(CultureInfo.InvariantCulture, $"{percent:0.##} %");

    private static string Mass(double grams, MassUnit unit) => unit == MassUnit.Pound
        ? string.Create(CultureInfo.InvariantCulture, $"{grams / CustomaryUnits.GramsPerOunce:0.##} oz")
        : string.Create(CultureInfo.InvariantCulture, $"{grams:0.##} g");
}

/// <summary>Reads the form of a recipe.</summary>
public static partial class RecipeReading
{
    /// <summary>The recipe; null where anything is wrong, with every field that is.</summary>
    public static (string Name, Mixture? Mixture, IReadOnlyList<Refusal> Refusals) Read(RecipeForm form, MassUnit unit)
    {
        var reader = new FieldReader();
        string name = reader.ReadName("name", form.Name);
        var shares = new List<bool>();
        IReadOnlyList<MixturePart> vegetables = ReadLines("vegetables", form.Vegetables, unit, shares, reader);
        IReadOnlyList<MixturePart> seasonings = ReadLines("seasonings", form.Seasonings, unit, shares, reader);
        double vinegar = ReadVinegar(form, unit, shares, reader);
        double starter = string.IsNullOrWhiteSpace(form.StarterBrine) ? 0
            : ReadAmount("starter brine", form.StarterBrine, form.StarterBrine, unit, shares, reader);
        double water = string.IsNullOrWhiteSpace(form.Water) ? 0 : ReadAmount("water", form.Water, form.Water, unit, shares, reader);
        string main = vegetables is [var first, ..] ? first.Name : "";
        var mixture = new Mixture
        {
            Vegetables = vegetables, Seasonings = seasonings, WaterGrams = water, VinegarGrams = vinegar, StarterGrams = starter,
            VinegarPercent = string.IsNullOrWhiteSpace(form.VinegarStrength) ? Mixture.UsualVinegarPercent
                : reader.Read("vinegar strength", form.VinegarStrength, Amount.Percent, "%", 1, 25, "1 to 25 % acetic acid"),
            SaltPercent = reader.Read("salt", form.Salt, Amount.Percent, "%", 0, SaltArithmetic.MostPercent, "per cent of salt"),
            SaltOf = reader.ReadChoice("salt of", form.SaltOf, SaltBasis.VegetablesAndWater),
            Sourness = reader.ReadChoice("how sour", form.Sourness, SournessLevel.Usual(main)),
            Cut = reader.ReadChoice("cut", form.Cut, Vegetable.TryFind(main, out Vegetable? known) ? known.UsualCut : Cut.Pieces),
            Allergens = [.. (form.Allergens ?? "").Split([',', '\n'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)],
            Note = reader.ReadNote("note", form.Note),
        };
        if (reader.Refusals.Count == 0 && MixtureRules.WrongShares("vegetables", shares, mixture) is { } wrong)
            reader.Refusals.Add(wrong);
        if (reader.Refusals.Count == 0)
            reader.Refusals.AddRange(MixtureRules.Check(name, mixture).Select(refusal => refusal with { Field = FieldOf(refusal.Field) }));
        return (name, reader.Refusals.Count == 0 ? mixture : null, reader.Refusals);
    }

    private static List<MixturePart> ReadLines(string field, string? typed, MassUnit unit, List<bool> shares, FieldReader reader)
    {
        var parts = new List<MixturePart>();
        foreach (string line in (typed ?? "").Split(['\n', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            Match match = Line().Match(line);
            if (!match.Success)
            {
                reader.Refuse(field, line, "a name and a mass or share on each line would be right, such as carrot 100 g (grated)");
                continue;
            }
            string name = match.Groups["name"].Value.Trim();
            parts.Add(new MixturePart(Vegetable.TryFind(name, out Vegetable? known) ? known.Name : name,
                ReadAmount(field, line, match.Groups["amount"].Value, unit, shares, reader), match.Groups["note"].Value.Trim()));
        }
        if (parts.Count == 0 && field == "vegetables" && reader.Refusals.TrueForAll(refusal => refusal.Field != field))
            reader.Refuse(field, null, "vegetables with their masses, one a line, would be right, such as cabbage 900 g");
        return parts;
    }

    /// <summary>As vinegar is read where a jar is put up, or a share.</summary>
    private static double ReadVinegar(RecipeForm form, MassUnit unit, List<bool> shares, FieldReader reader)
    {
        if (string.IsNullOrWhiteSpace(form.Vinegar))
            return 0;
        if (!LiquidMass.TryRead(form.Vinegar, LiquidMass.WaterKilogramsPerLitre, out double kilograms) || kilograms <= 0)
            return ReadAmount("vinegar", form.Vinegar, form.Vinegar, unit, shares, reader);
        shares.Add(false);
        return 1000 * kilograms;
    }

    private static double ReadAmount(string field, string line, string amount, MassUnit unit, List<bool> shares, FieldReader reader)
    {
        bool isShare = Amount.Percent.TryRead(amount, null, out double percent) && percent is > 0 and <= 100;
        shares.Add(isShare);
        if (isShare)
            return percent / 100 * MixtureRules.GramsOfAllShares;
        if (Amount.MassKilograms.TryRead(amount, unit == MassUnit.Pound ? "lb" : "g", out double kilograms) && kilograms > 0)
            return 1000 * kilograms;
        reader.Refuse(field, line.Trim(), $"a mass or a share would be right, such as {Amount.MassKilograms.Example}, or 90 %");
        return 1;
    }

    /// <summary>The field of the form in which a field of the file stands.</summary>
    private static string FieldOf(string path) => path switch
    {
        "water_grams" => "water",
        "vinegar_grams" => "vinegar",
        "vinegar_percent" => "vinegar strength",
        "starter_brine_grams" => "starter brine",
        "salt_percent" => "salt",
        "sourness" => "how sour",
        _ => path.Split('[')[0],
    };

    [GeneratedRegex(@"^(?<name>[^\d(]+?)\s*(?<amount>[\d.,½¼¾⅓⅔][^(]*?)\s*(?:\((?<note>[^()]*)\))?$")]
    private static partial Regex Line();
}
