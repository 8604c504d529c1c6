using System.Text.RegularExpressions;
using FermentWatch.Kinetics;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Typed;

namespace FermentWatch.Kitchen.PuttingUp;

/// <summary>Reads more vegetables and seasonings: name and mass, one a line or comma.</summary>
internal static partial class IngredientList
{
    public static IReadOnlyList<Portion> Read(string? text, string bareUnit, List<Refusal> refusals)
    {
        var portions = new List<Portion>();
        foreach (string entry in Between().Split(text ?? "").Select(each => each.Trim()).Where(each => each.Length > 0))
            if (ReadOne(entry, bareUnit, refusals) is { } portion)
                portions.Add(portion);
        return portions;
    }

    private static Portion? ReadOne(string entry, string bareUnit, List<Refusal> refusals)
    {
        int number = entry.IndexOfAny(['0', '1', '2', '3', '4', '5', '6', '7', '8', '9', '-', '.', '½', '¼', '¾', '⅓', '⅔']);
        string name = (number < 0 ? entry : entry[..number]).Trim();
        if (RefusedIngredient.TryFindReason(name, out string? reason))
        {
            refusals.Add(new("also in it", name, $"leave it out: {reason}"));
            return null;
        }
        if (number > 0 && SafeText.WrongName("also in it", name) is { } wrong)
        {
            refusals.Add(wrong);
            return null;
        }
        if (number < 1 || !Amount.MassKilograms.TryRead(entry[number..], bareUnit, out double kilograms) || kilograms <= 0)
        {
            refusals.Add(new("also in it", $"'{entry}'", "a name and a mass above zero would be right, such as carrot 200 g, ginger 20 g"));
            return null;
        }
        string known = Vegetable.TryFind(name, out Vegetable? vegetable) ? vegetable.Name : name;
        return new Portion(known, kilograms);
    }

    /// <summary>What stands between two entries; a comma within a number (0,2 kg) does not.</summary>
    [GeneratedRegex(@"[\n;]|(?<!\d),|,(?!\d)")]
    private static partial Regex Between();
}
