using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Jars;

namespace FermentWatch.Kitchen.Planning;

/// <summary>
/// How much goes into a vessel and how much brine must rise in it. A quart is packed full with 2 lb (Univ. of California Master Food Preserver:
/// 2 lb and 4 tsp, about 1 quart), a gallon of vessel takes 5 lb (Michigan State; Cornell). Between rim and brine: in a crock 4 to 5 inches (USDA
/// Complete Guide to Home Canning, Guide 6), in a jar 1 inch (common practice, no source). Over the solids: 1 to 2 inches of brine (NDSU;
/// Michigan State).
/// </summary>
/// <param name="LeastKilogramsPerLitre">Prepared vegetables per litre of vessel, loosely packed.</param>
/// <param name="UsualKilogramsPerLitre">What is planned with.</param>
/// <param name="MostKilogramsPerLitre">Pressed to the rim.</param>
/// <param name="WaterKilogramsPerLitre">Water in which salt is dissolved, for what gives no brine of its own; else 0.</param>
public sealed record VesselFill(double LeastKilogramsPerLitre, double UsualKilogramsPerLitre, double MostKilogramsPerLitre,
    double WaterKilogramsPerLitre)
{
    /// <summary>From so many litres on a vessel is a crock: a gallon.</summary>
    public const double CrockFromLitres = 3.7;

    private const double FiveLbAGallon = 0.60, TwoLbAQuart = 0.96;

    /// <summary>A quart less an inch below the rim; this project's own arithmetic.</summary>
    private const double BelowTheRim = 0.85;

    /// <summary>About 400 g of salt water to a litre of whole or cut vegetables; common practice, no source.</summary>
    private const double BrinePouredOn = 0.4;

    private const double CentimetresPerInch = 2.54;

    /// <summary>Whether a vessel is emptied into jars when it is sour, rather than kept in the cold itself.</summary>
    public static bool IsCrock(double litres) => litres >= CrockFromLitres;

    /// <summary>What goes into a vessel.</summary>
    /// <param name="litres">Its size, above 0.</param>
    /// <param name="cut">How the vegetables are cut.</param>
    public static VesselFill Of(double litres, Cut cut) => Servings.GivesItsOwnBrine(cut)
        ? new VesselFill(FiveLbAGallon, IsCrock(litres) ? FiveLbAGallon : BelowTheRim, TwoLbAQuart, 0)
        : new VesselFill(0.8 * FiveLbAGallon, FiveLbAGallon, FiveLbAGallon, BrinePouredOn);

    /// <summary>Between the rim and the brine, cm, least and most.</summary>
    public static (double Least, double Most) HeadspaceCentimetres(double litres) => IsCrock(litres)
        ? (4 * CentimetresPerInch, 5 * CentimetresPerInch) : (CentimetresPerInch, CentimetresPerInch);

    /// <summary>
    /// Brine that must stand over the pressed solids, millilitres: one to two inches of the vessel's width, which is taken as that of a cylinder
    /// 1.8 times as high as wide for a jar and 1.2 times for a crock (measured on no vessel of yours; this project's own).
    /// </summary>
    public static (double Least, double Most) BrineToRiseMillilitres(double litres)
    {
        double slender = IsCrock(litres) ? 1.2 : 1.8;
        double width = Math.Cbrt(4 * 1000 * litres / (Math.PI * slender));
        double anInch = Math.PI / 4 * width * width * CentimetresPerInch;
        return (anInch, 2 * anInch);
    }
}
