using System.Diagnostics.CodeAnalysis;

namespace FermentWatch.Kinetics.Produce;

/// <summary>
/// A vegetable the model has figures for. Composition: USDA National Nutrient Database SR, the NDB numbers beside each;
/// raw pH: middle of the range in the FDA lists of approximate pH of foods (2003 and earlier). Malic and citric acid are
/// in neither table: they are from memory of general food composition tables and carry a wide prior.
/// </summary>
public sealed class Vegetable
{
    private int? _index;

    private Vegetable(string name, string[] aliases, Composition composition, double rawPh, double malic, double citric, FloraKind flora)
    {
        Name = name;
        Aliases = aliases;
        Composition = composition;
        RawPh = rawPh;
        MalicMillimolesPerKilogram = malic;
        CitricMillimolesPerKilogram = citric;
        Flora = flora;
    }

    /// <summary>White or green cabbage (SR 11109).</summary>
    public static Vegetable Cabbage { get; } = new("cabbage", ["white cabbage", "green cabbage", "kraut"],
        new(92.18, 1.28, 3.20, 40, 12, 26, 170, 18), 6.1, 20, 5.5, FloraKind.Head);

    /// <summary>Red cabbage (SR 11112).</summary>
    public static Vegetable RedCabbage { get; } = new("red cabbage", ["purple cabbage"],
        new(90.39, 1.43, 3.83, 45, 16, 30, 243, 27), 5.7, 20, 5.5, FloraKind.Head);

    /// <summary>Napa cabbage (SR 11119).</summary>
    public static Vegetable Napa { get; } = new("napa", ["napa cabbage", "chinese cabbage"],
        new(94.39, 1.20, 1.41, 77, 13, 29, 238, 9), 5.93, 21, 6, FloraKind.Leaf);

    /// <summary>Carrot (SR 11124).</summary>
    public static Vegetable Carrot { get; } = new("carrot", ["carrots"],
        new(88.29, 0.93, 4.74, 33, 12, 35, 320, 69), 6.15, 18, 2, FloraKind.Root);

    /// <summary>Cucumber with its peel (SR 11205).</summary>
    public static Vegetable Cucumber { get; } = new("cucumber", ["cucumbers", "gherkin", "gherkins"],
        new(95.23, 0.65, 1.67, 16, 13, 24, 147, 2), 5.45, 13, 1, FloraKind.Fruit);

    /// <summary>Daikon, the long white radish (SR 11430).</summary>
    public static Vegetable Daikon { get; } = new("daikon", ["white radish", "mooli"],
        new(94.62, 0.60, 2.50, 27, 16, 23, 227, 21), 5.75, 8, 2, FloraKind.Root);

    /// <summary>Beet (SR 11080).</summary>
    public static Vegetable Beet { get; } = new("beet", ["beets", "beetroot"],
        new(87.58, 1.61, 6.76, 16, 23, 40, 325, 78), 5.95, 3, 10, FloraKind.Root);

    /// <summary>Radish (SR 11429).</summary>
    public static Vegetable Radish { get; } = new("radish", ["radishes"],
        new(95.27, 0.68, 1.86, 25, 10, 20, 233, 39), 6.0, 8, 2, FloraKind.Root);

    /// <summary>Turnip (SR 11564).</summary>
    public static Vegetable Turnip { get; } = new("turnip", ["turnips"],
        new(91.87, 0.90, 3.80, 30, 11, 27, 191, 67), 5.6, 15, 3, FloraKind.Root);

    /// <summary>Pak choi (SR 11116). No raw pH in the tables: that of napa is used.</summary>
    public static Vegetable PakChoi { get; } = new("pak choi", ["bok choy", "pak choy"],
        new(95.32, 1.50, 1.18, 105, 19, 37, 252, 65), 5.93, 21, 6, FloraKind.Leaf);

    /// <summary>Every vegetable of the catalogue.</summary>
    public static IReadOnlyList<Vegetable> All { get; } =
        [Cabbage, RedCabbage, Napa, Carrot, Cucumber, Daikon, Beet, Radish, Turnip, PakChoi];

    /// <summary>The name it is asked for by, in lower case; also its identity in stored recipes.</summary>
    public string Name { get; }

    /// <summary>Other names it answers to.</summary>
    public IReadOnlyList<string> Aliases { get; }

    /// <summary>What 100 g of it hold.</summary>
    public Composition Composition { get; }

    /// <summary>pH of the raw vegetable.</summary>
    public double RawPh { get; }

    /// <summary>Malic acid, mmol per kg of vegetable.</summary>
    public double MalicMillimolesPerKilogram { get; }

    /// <summary>Citric acid, mmol per kg of vegetable.</summary>
    public double CitricMillimolesPerKilogram { get; }

    /// <summary>What lactic acid bacteria it brings along.</summary>
    public FloraKind Flora { get; }

    /// <summary>Finds a vegetable by name or alias, whatever the case and the spaces around it.</summary>
    public static bool TryFind(string? name, [NotNullWhen(true)] out Vegetable? vegetable)
    {
        string wanted = string.Join(' ', (name ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));
        vegetable = All.FirstOrDefault(each => Answers(each, wanted));
        return vegetable is not null;
    }

    /// <summary>Its place in the catalogue.</summary>
    internal int Index => _index ??= All.TakeWhile(each => each != this).Count();

    /// <summary>The name.</summary>
    public override string ToString() => Name;

    private static bool Answers(Vegetable vegetable, string wanted) =>
        vegetable.Name.Equals(wanted, StringComparison.OrdinalIgnoreCase)
        || vegetable.Aliases.Any(alias => alias.Equals(wanted, StringComparison.OrdinalIgnoreCase));
}
