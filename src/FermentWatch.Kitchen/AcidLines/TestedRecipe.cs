using FermentWatch.Kitchen.Jars;

namespace FermentWatch.Kitchen.AcidLines;

/// <summary>
/// Which published recipe speaks of a jar: what is published for one vegetable is never quoted for another. Kraut: USDA Complete
/// Guide to Home Canning, Guide 6, AIB 539, 2015. Kimchi: Colorado State University Extension; Oregon State University SP-1007.
/// </summary>
public static class TestedRecipe
{
    private static readonly string[] Cabbages = ["cabbage", "red cabbage"];

    /// <summary>What is published of napa and daikon in the cold.</summary>
    public const string InTheCold = "napa was ripe after a week at 50 F (10 °C), and radish at pH 4.0 after 12 days (reviews of kimchi; Kim S.D. et al. 1999).";

    private static readonly string[] FermentingInTheCold = ["napa", "daikon", "radish"];

    /// <summary>What most of a jar is; words for it where what went in is not on record.</summary>
    public static string Main(Jar jar) => jar.Portions.MaxBy(portion => portion.MassKilograms)?.Produce ?? "what is in it";

    /// <summary>Whether the recipe of sauerkraut is its own.</summary>
    public static bool IsKraut(Jar jar) => Cabbages.Contains(Main(jar));

    /// <summary>Whether it is published to ferment at 10 C, where kraut may hardly do.</summary>
    public static bool FermentsInTheCold(Jar jar) => FermentingInTheCold.Contains(Main(jar));

    /// <summary>Whether what is published of kimchi is its own.</summary>
    public static bool IsKimchi(Jar jar) => Main(jar) == "napa";
}
