using System.Globalization;
using FermentWatch.Kinetics.Salt;

namespace FermentWatch.Service.CommandLine.SaltByWeight;

/// <summary>Why salt by the spoon is a range.</summary>
internal static class SaltWords
{
    public static string WhyARange(SaltKind kind)
    {
        SpoonMeasure spoon = SpoonMeasure.Of(kind);
        string weighs = string.Create(CultureInfo.InvariantCulture,
            $"a tablespoon of {kind.Words()} is published or was weighed as {spoon.LowGrams:0.##} to {spoon.HighGrams:0.##} g");
        string rule = kind == SaltKind.CoarseFlake ? "never measure flake salt by volume: weigh it" : "weigh it if you can";
        return $"{weighs}; {rule}";
    }
}

/// <summary>Kinds of salt by the names people type, and how much a cup of each holds.</summary>
internal static class SaltKindNames
{
    private const double TablespoonsPerCup = 16;

    // 292 g is USDA's figure for a cup of table salt (SR 02047, from memory); 16 of its tablespoons would be 288 g.
    private const double TypicalCupOfTableSaltGrams = 292;

    private static readonly (string Name, string Words, SaltKind Kind)[] All =
    [
        ("table", "table salt", SaltKind.Table), ("canning", "canning salt", SaltKind.CanningOrPickling),
        ("pickling", "pickling salt", SaltKind.CanningOrPickling), ("flake", "coarse flake salt", SaltKind.CoarseFlake),
    ];

    public static string Known => string.Join(", ", All.Select(each => each.Name));

    public static SaltKind? Find(string name) =>
        All.Where(each => each.Name.Equals(name.Trim(), StringComparison.OrdinalIgnoreCase)).Select(each => (SaltKind?)each.Kind).FirstOrDefault();

    public static string Words(this SaltKind kind) => All.First(each => each.Kind == kind).Words;

    /// <summary>Grams in so many millilitres of salt. From a quarter of a cup up the published cup is taken, below it the spoon.</summary>
    public static SpoonMeasure GramsIn(this SaltKind kind, double millilitres)
    {
        SpoonMeasure spoon = SpoonMeasure.Of(kind);
        double spoons = millilitres / CustomaryUnits.MillilitresPerTablespoon;
        bool byCup = spoons >= TablespoonsPerCup / 4 && kind == SaltKind.Table;
        double typical = byCup ? TypicalCupOfTableSaltGrams / TablespoonsPerCup : spoon.TypicalGrams;
        return new SpoonMeasure(spoon.LowGrams * spoons, typical * spoons, spoon.HighGrams * spoons);
    }
}
