using System.Globalization;
using FermentWatch.Kinetics.Salt;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;

namespace FermentWatch.Kitchen.Guides;

/// <summary>
/// What low brine is topped up with: never thinner than the published brine, and as salty as the jar where it was salted more.
/// Published: 1.5 tablespoons of salt in a quart of boiled and cooled water (USDA Complete Guide to Home Canning, Guide 6, AIB 539,
/// 2015; NDSU Extension), which at the usual tablespoon of canning salt (<see cref="SpoonMeasure"/>) are 28 g in a litre, rounded down.
/// </summary>
public static class TopUpBrine
{
    private const double PublishedTablespoonsInAQuart = 1.5;

    /// <summary>The published brine as cautions and guides say it, for any jar.</summary>
    public static readonly string Published = string.Create(CultureInfo.InvariantCulture,
        $"{PublishedTablespoonsInAQuart:0.#} tablespoons of salt in a quart ({PublishedGrams:0} g in a litre) of boiled and cooled water");

    /// <summary>Grams of salt in a litre of water for a jar; never less than the published brine.</summary>
    public static double GramsPerLitre(Jar jar) =>
        Math.Max(PublishedGrams, jar.Salting.Percent is { } percent ? Math.Ceiling(SaltArithmetic.GramsForBrine(1000, percent)) : 0);

    /// <summary>The same in a household's units: <c>53 g of salt in a litre</c>, <c>3 tablespoons of salt in a quart</c>.</summary>
    public static string Words(Jar jar, MassUnit unit)
    {
        double grams = GramsPerLitre(jar);
        if (unit != MassUnit.Pound)
            return string.Create(CultureInfo.InvariantCulture, $"{grams:0} g of salt in a litre");
        double tablespoons = Math.Max(PublishedTablespoonsInAQuart, Math.Ceiling(2 * InAQuart(grams) / Tablespoon) / 2);
        return string.Create(CultureInfo.InvariantCulture, $"{tablespoons:0.#} tablespoons of salt in a quart");
    }

    private static double Tablespoon => SpoonMeasure.Of(SaltKind.CanningOrPickling).TypicalGrams;

    private static double PublishedGrams => Math.Floor(PublishedTablespoonsInAQuart * Tablespoon / CustomaryUnits.MillilitresPerQuart * 1000);

    private static double InAQuart(double gramsPerLitre) => gramsPerLitre * CustomaryUnits.MillilitresPerQuart / 1000;
}
