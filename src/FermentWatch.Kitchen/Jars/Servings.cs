using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Salt;

namespace FermentWatch.Kitchen.Jars;

/// <summary>
/// What of the prepared vegetables comes to the table. Published ends: 9 quarts from 25 lb, 0.75 l/kg (USDA Complete Guide to Home Canning,
/// Guide 6), and a quart from 2 lb, 1.04 l/kg (Univ. of California Master Food Preserver). They are of shredded cabbage; of other vegetables
/// nobody has published any here, and the same share is taken of the room they fill.
/// </summary>
public static class Servings
{
    /// <summary>The least that is published, litres of kraut with its brine from a kilogram of prepared cabbage.</summary>
    public const double LeastLitresPerKilogram = 9 * CustomaryUnits.LitresPerQuart / (25 * CustomaryUnits.KilogramsPerPound);

    /// <summary>The most that is published.</summary>
    public const double MostLitresPerKilogram = CustomaryUnits.LitresPerQuart / (2 * CustomaryUnits.KilogramsPerPound);

    /// <summary>What is planned with: the middle.</summary>
    public const double UsualLitresPerKilogram = (LeastLitresPerKilogram + MostLitresPerKilogram) / 2;

    /// <summary>The published ends are taken as the 95 % range of a normal distribution: its standard deviation, as a share of the middle.</summary>
    public const double Deviation = (MostLitresPerKilogram - LeastLitresPerKilogram) / (2 * 1.96) / UsualLitresPerKilogram;

    /// <summary>Whether vegetables so cut are covered by the brine that salt draws from them.</summary>
    public static bool GivesItsOwnBrine(Cut cut) => cut is Cut.Shredded or Cut.SaltedLeaves or Cut.Sliced;

    /// <summary>What a litre of it weighs at the table; a cup of kraut with its brine is 236 g (USDA SR 11439, from memory).</summary>
    public static double KilogramsPerLitre(Cut cut) => GivesItsOwnBrine(cut) ? 1.0 : 0.6;

    /// <summary>Litres at the table from prepared vegetables, kg.</summary>
    public static double LitresFrom(double preparedKilograms, Cut cut) => preparedKilograms * UsualLitresPerKilogram / KilogramsPerLitre(cut);

    /// <summary>Litres at the table of a full jar.</summary>
    public static double LitresOf(Jar jar) => LitresFrom(jar.Portions.Sum(portion => portion.MassKilograms), jar.Cut);
}
