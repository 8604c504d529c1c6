using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Jars;

namespace FermentWatch.Kitchen.Labels;

/// <summary>
/// What of a jar is to be made known to whoever eats of it: the plants of Regulation (EU) No 1169/2011 (food information to consumers, 2011),
/// Annex II, that people put into jars of vegetables. Milk, fish, eggs and their like are refused when a jar is put up.
/// </summary>
public static class Allergens
{
    private static readonly string[] Seasonings = ["mustard", "sesame", "soy", "lupin", "peanut"];

    /// <summary>By name, each once, in the order in which they went in.</summary>
    public static IReadOnlyList<string> Of(Jar jar) => [.. jar.Portions.SelectMany(portion => In(portion.Produce)).Distinct()];

    /// <summary>Of one thing, by its name.</summary>
    public static IEnumerable<string> In(string produce) => Vegetable.TryFind(produce, out Vegetable? known)
        ? known.Allergen is { } allergen ? [allergen] : []
        : Seasonings.Where(seasoning => produce.Contains(seasoning, StringComparison.OrdinalIgnoreCase));
}
