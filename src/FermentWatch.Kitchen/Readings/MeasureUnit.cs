namespace FermentWatch.Kitchen.Readings;

/// <summary>A unit in which a value may come in, and the way to the unit in which its quantity is stored.</summary>
public sealed class MeasureUnit
{
    /// <summary>How the unit is written, case-sensitive.</summary>
    public required string Symbol { get; init; }

    /// <summary>What it measures.</summary>
    public required Quantity Quantity { get; init; }

    /// <summary>How people see it behind a number; empty where it has none.</summary>
    public required string Label { get; init; }

    /// <summary>The value in the unit in which the quantity is stored.</summary>
    public required Func<double, double> ToStored { get; init; }

    /// <summary>How people and gateways write it beside a value, in upper case.</summary>
    public required IReadOnlyList<string> Spellings { get; init; }

    /// <summary>Words in the name of a field or topic that say this unit, lower case.</summary>
    public IReadOnlyList<string> NameWords { get; init; } = [];

    /// <summary>The last word of a name that says this unit, lower case; null where none does.</summary>
    public string? NameEnding { get; init; }

    /// <summary>Values for which it is taken where nothing names the unit, the first that holds; null: any.</summary>
    /// <remarks>Where kitchens and cellars are, the ranges hardly overlap: 45 F is a refrigerator, 45 C is no room.</remarks>
    public Bounds? Likely { get; init; }

    /// <summary>Whether it is named among the units that belong in a pack: most volts there are a battery's.</summary>
    public bool IsOfferedInPacks { get; init; } = true;

    /// <summary>Every unit that is understood.</summary>
    public static IReadOnlyList<MeasureUnit> All => field ??= [.. MeasuredQuantity.All.SelectMany(each => each.Units)];

    /// <summary>The unit with this symbol, or null.</summary>
    public static MeasureUnit? Find(string? symbol)
    {
        foreach (MeasureUnit unit in All)
            if (unit.Symbol == symbol)
                return unit;
        return null;
    }

    /// <summary>The unit that a document means: as SenML writes it, or as people and gateways do; null where none is.</summary>
    public static MeasureUnit? Meant(string word)
    {
        string upper = word.Trim().ToUpperInvariant();
        return Find(word) ?? All.FirstOrDefault(unit => unit.Spellings.Contains(upper));
    }

    /// <summary>Words of which one would be right: <c>Cel, degF or K</c>.</summary>
    public static string OneOf(IReadOnlyList<string> words) => $"{string.Join(", ", words.SkipLast(1))} or {words[^1]}";

    public override string ToString() => Symbol;
}
