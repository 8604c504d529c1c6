using FermentWatch.Kitchen.Jars;

namespace FermentWatch.Kitchen.Lines;

/// <summary>
/// Which published recipe speaks of a jar: what is published for one vegetable is never quoted for another. Kraut: USDA Complete
/// Guide to Home Canning, Guide 6, AIB 539, 2015. Kimchi: Colorado State University Extension; Oregon State University SP-1007.
/// </summary>
public static class TestedRecipe
{
    private static readonly string[] Cabbages = ["cabbage", "red cabbage"];

    /// <summary>What most of a jar is.</summary>
    public static string Main(Jar jar) => jar.Portions.MaxBy(portion => portion.MassKilograms)!.Produce;

    /// <summary>Whether the recipe of sauerkraut is its own.</summary>
    public static bool IsKraut(Jar jar) => Cabbages.Contains(Main(jar));

    /// <summary>Whether what is published of kimchi is its own.</summary>
    public static bool IsKimchi(Jar jar) => Main(jar) == "napa";
}
