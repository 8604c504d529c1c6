using System.Globalization;

namespace FermentWatch.Kitchen.Entry;

/// <summary>
/// Reads an amount as people type it: a number with a point, and a unit, with or without a space between (<c>2.3kg</c>,
/// <c>5 lb</c>, <c>18C</c>, <c>2.25 %</c>). US customary units after NIST Handbook 44 (from memory): lb 453.59237 g,
/// oz 28.3495 g, quart 946.353 mL, pint 473.176 mL, gallon 3785.41 mL, cup 236.588 mL, tablespoon 14.787 mL, teaspoon 4.929 mL.
/// </summary>
public sealed class Amount
{
    private readonly Dictionary<string, AmountUnit> _units;
    private readonly string _example;

    private Amount(string example, Dictionary<string, AmountUnit> units)
    {
        _example = example;
        _units = new(units, StringComparer.OrdinalIgnoreCase);
    }

    /// <summary>Mass in kilograms.</summary>
    public static Amount MassKilograms { get; } = new("2.3kg, 800g, 5lb or 12oz", new()
    {
        ["kg"] = new(1), ["g"] = new(0.001), ["lb"] = new(0.45359237), ["lbs"] = new(0.45359237), ["oz"] = new(0.0283495),
    });

    /// <summary>Volume in litres.</summary>
    public static Amount VolumeLitres { get; } = new("1l, 750ml, 1qt or 5gal", new()
    {
        ["l"] = new(1), ["litre"] = new(1), ["litres"] = new(1), ["ml"] = new(0.001), ["pt"] = new(0.473176), ["pint"] = new(0.473176),
        ["qt"] = new(0.946353), ["quart"] = new(0.946353), ["gal"] = new(3.78541), ["gallon"] = new(3.78541),
        ["cup"] = new(0.236588), ["cups"] = new(0.236588), ["tbsp"] = new(0.0147868), ["tsp"] = new(0.00492892),
    });

    /// <summary>Temperature in degrees Celsius.</summary>
    public static Amount Celsius { get; } = new("18C or 64F", new()
    {
        ["C"] = new(1), ["°C"] = new(1), ["F"] = new(5.0 / 9, 32), ["°F"] = new(5.0 / 9, 32),
    });

    /// <summary>Per cent.</summary>
    public static Amount Percent { get; } = new("2.25%", new() { ["%"] = new(1) });

    /// <summary>Days.</summary>
    public static Amount Days { get; } = new("30, 2.5d or 12h", new()
    {
        ["d"] = new(1), ["day"] = new(1), ["days"] = new(1), ["h"] = new(1.0 / 24),
    });

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
        string typed = (text ?? "").Trim();
        int end = typed.Length;
        while (end > 0 && !char.IsAsciiDigit(typed[end - 1]) && typed[end - 1] != '.')
            end--;
        value = 0;
        if (!double.TryParse(typed[..end], NumberStyles.Float, CultureInfo.InvariantCulture, out double number) || !double.IsFinite(number))
            return false;
        string unit = typed[end..].Trim();
        unit = unit.Length == 0 ? unitIfBare ?? "" : unit;
        if (unit.Length == 0 && _units.Count == 0)
        {
            value = number;
            return true;
        }
        if (!_units.TryGetValue(unit, out AmountUnit known))
            return false;
        value = known.ToOurs(number);
        return true;
    }
}
