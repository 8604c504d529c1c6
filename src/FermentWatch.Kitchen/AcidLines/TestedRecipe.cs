using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Jars;

namespace FermentWatch.Kitchen.AcidLines;

/// <summary>Which published recipe speaks of a jar: what is published for one vegetable is never quoted for another.</summary>
public static class TestedRecipe
{
    /// <summary>Who goes on in the cold, as the words below tell it.</summary>
    public const string WhoGoesOnInTheCold = "Napa and daikon";

    /// <summary>What is published of them in the cold.</summary>
    public const string InTheCold =
        "napa was ripe after a week at 50 F (10 °C), and radish at pH 4.0 after 12 days (reviews of kimchi; Kim S.D. et al. 1999).";

    /// <summary>What most of a jar is; words for it where what went in is not on record.</summary>
    public static string Main(Jar jar) => jar.Portions.MaxBy(portion => portion.MassKilograms)?.Produce ?? "what is in it";

    /// <summary>The same as the catalogue knows it; null where it does not.</summary>
    public static Vegetable? MainVegetable(Jar jar) => Vegetable.TryFind(Main(jar), out Vegetable? vegetable) ? vegetable : null;

    /// <summary>Whether the recipe of sauerkraut is its own.</summary>
    public static bool IsKraut(Jar jar) => MainVegetable(jar)?.Recipe == PublishedRecipe.Kraut;

    /// <summary>Whether it is published to ferment at 10 C, where kraut may hardly do.</summary>
    public static bool FermentsInTheCold(Jar jar) => MainVegetable(jar) is { FermentsInTheCold: true };

    /// <summary>Whether what is published of kimchi is its own.</summary>
    public static bool IsKimchi(Jar jar) => MainVegetable(jar)?.Recipe == PublishedRecipe.Kimchi;
}
