using System.Globalization;
using System.Text.RegularExpressions;
using static FermentWatch.Kinetics.Salt.CustomaryUnits;

namespace FermentWatch.Kitchen.Typed;

/// <summary>
/// Reads an amount as people write it: a number with a point, a comma or as a fraction, and a unit, with or without a space
/// between (<c>2.3kg</c>, <c>2,5 kg</c>, <c>1/2 lb</c>, <c>1 lb 12 oz</c>, <c>18C</c>). A comma before three digits says nothing
/// certain (1,500) and is not taken.
/// </summary>
public sealed partial class Amount
{
    private readonly Dictionary<string, AmountUnit> _units;
    private readonly string _example;

    private Amount(string example, Dictionary<string, AmountUnit> units)
    {
        _example = example;
        _units = new(units, StringComparer.OrdinalIgnoreCase);
    }

    /// <summary>Mass in kilograms.</summary>
    public static Amount MassKilograms { get; } = new("800 g, 2.3 kg, 5 lb or 1 lb 12 oz", Units(
        (1, ["kg", "kilo", "kilos"]), (0.001, ["g", "gram", "grams"]), (KilogramsPerPound, ["lb", "lbs", "pound", "pounds"]),
            (GramsPerOunce / 1000, ["oz", "ounce", "ounces"])));

    /// <summary>Volume in litres.</summary>
    public static Amount VolumeLitres { get; } = new("1 l, 750 ml, 1 qt or 5 gal", Units(
        (1, ["l", "litre", "litres"]), (0.001, ["ml"]), (MillilitresPerPint / 1000, ["pt", "pint", "pints"]),
            (LitresPerQuart, ["qt", "quart", "quarts"]),
        (MillilitresPerGallon / 1000, ["gal", "gallon", "gallons"]), (MillilitresPerCup / 1000, ["cup", "cups"]),
        (MillilitresPerTablespoon / 1000, ["tbsp"]), (MillilitresPerTeaspoon / 1000, ["tsp"])));

    /// <summary>Temperature in degrees Celsius.</summary>
    public static Amount Celsius { get; } = new("18C or 64F", new()
    {
        ["C"] = new(1), ["°C"] = new(1), ["F"] = new(5.0 / 9, 32), ["°F"] = new(5.0 / 9, 32),
    });

    /// <summary>Per cent.</summary>
    public static Amount Percent { get; } = new("2.25%", Units((1, ["%"])));

    /// <summary>Days.</summary>
    public static Amount Days { get; } = new("30, 2.5d or 12h", Units((1, ["d", "day", "days"]), (1.0 / 24, ["h"])));

    /// <summary>A bare number.</summary>
    public static Amount Number { get; } = new("3.9", []);

    /// <summary>What a right amount looks like, for error messages.</summary>
    public string Example => _example;

    /// <summary>Reads <paramref name="text"/>; false if it is no finite number with a unit of this kind.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="unitIfBare">The unit to take where none was typed; null refuses a bare number unless the kind has no units.</param>
    /// <param name="value">The amount in our unit.</param>
    public bool TryRead(string? text, string? unitIfBare, out double value)
    {
        value = 0;
        string typed = WithPlainFractions((text ?? "").Trim());
        int sign = typed.StartsWith('-') ? -1 : 1;
        typed = sign < 0 ? typed[1..] : typed;
        List<Match> parts = [.. Part().Matches(typed).Cast<Match>()];
        if (parts.Count == 0 || parts.Sum(part => part.Length) != typed.Length || (parts.Count > 1 && sign < 0))
            return false;
        double sum = 0;
        foreach (Match part in parts)
        {
            // Only a number that stands alone may do without its unit: "1 lb 12" says nothing certain.
            if (!TryReadPart(part, sign, parts.Count == 1 ? unitIfBare : null, out double one))
                return false;
            sum += one;
        }
        value = sum;
        return double.IsFinite(sum);
    }

    private static Dictionary<string, AmountUnit> Units(params (double Factor, string[] Names)[] units) =>
        units.SelectMany(unit => unit.Names.Select(name => (name, unit.Factor))).ToDictionary(each => each.name, each =>
            new AmountUnit(each.Factor));

    private bool TryReadPart(Match part, int sign, string? unitIfBare, out double value)
    {
        double number = sign * ValueOf(part);
        string unit = part.Groups["unit"].Value;
        unit = unit.Length == 0 ? unitIfBare ?? "" : unit;
        value = number;
        if (unit.Length == 0 && _units.Count == 0)
            return double.IsFinite(number);
        bool isKnown = _units.TryGetValue(unit, out AmountUnit known);
        value = isKnown ? known.ToOurs(number) : 0;
        return isKnown && double.IsFinite(value);
    }

    private static double ValueOf(Match part)
    {
        if (part.Groups["number"] is { Success: true } number)
            return AmbiguousThousands().IsMatch(number.Value) ? double.NaN : Plain(number.Value.Replace(',', '.'));
        double whole = part.Groups["whole"] is { Success: true } before ? Plain(before.Value) : 0;
        return whole + (Plain(part.Groups["top"].Value) / Plain(part.Groups["bottom"].Value));
    }

    /// <summary>The two ways in which a comma before three digits is read: <c>. Was 1500 g meant, or 1.5 g?</c>; empty where there is none.</summary>
    public static string ReadTwoWays(string? typed)
    {
        string given = (typed ?? "").Trim(), number = given.Split(' ')[0].TrimEnd([.. Letters]);
        if (!AmbiguousThousands().IsMatch(number))
            return "";
        string unit = given[number.Length..];
        return string.Create(CultureInfo.InvariantCulture,
            $". Was {number.Replace(",", "", StringComparison.Ordinal)}{unit} meant, or {Plain(number.Replace(',', '.')):0.###}{unit}?");
    }

    private const string Letters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ%°";

    private static double Plain(string number) => double.Parse(number, NumberStyles.Float, CultureInfo.InvariantCulture);

    private static string WithPlainFractions(string typed) => typed
        .Replace("½", " 1/2", StringComparison.Ordinal)
        .Replace("¼", " 1/4", StringComparison.Ordinal).Replace("¾", " 3/4", StringComparison.Ordinal)
        .Replace("⅓", " 1/3", StringComparison.Ordinal).Replace("⅔", " 2/3", StringComparison.Ordinal).Replace('−', '-').Trim();

    [GeneratedRegex("""
        \G(?:(?:(?<whole>\d{1,9})\s+)?(?<top>\d{1,9})/(?<bottom>\d{1,9})|(?<number>\d+(?:[.,]\d+)?(?:[eE][-+]?\d+)?|[.,]\d+))
        \s*(?<unit>[A-Za-z°%]*)[.,]?\s*
        """, RegexOptions.IgnorePatternWhitespace | RegexOptions.CultureInvariant)]
    private static partial Regex Part();

    [GeneratedRegex(@"^[1-9]\d*,\d{3}$", RegexOptions.CultureInvariant)]
    private static partial Regex AmbiguousThousands();
}

/// <summary>A unit people type, and how to turn it into ours: ours = (typed - Offset) x Factor.</summary>
internal readonly record struct AmountUnit(double Factor, double Offset = 0)
{
    public double ToOurs(double typed) => (typed - Offset) * Factor;
}

/// <summary>Reads a liquid by mass or by volume.</summary>
public static class LiquidMass
{
    /// <summary>Density of water at 20 C, kg/L (general tables, from memory).</summary>
    public const double WaterKilogramsPerLitre = 0.9982;

    /// <summary>Reads <c>500g</c>, <c>1l</c> or <c>1qt</c> as kilograms.</summary>
    public static bool TryRead(string? typed, double kilogramsPerLitre, out double kilograms)
    {
        if (Amount.MassKilograms.TryRead(typed, null, out kilograms))
            return true;
        bool read = Amount.VolumeLitres.TryRead(typed, null, out double litres);
        kilograms = litres * kilogramsPerLitre;
        return read;
    }
}
