using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Jars;

namespace FermentWatch.Kitchen.Words;

/// <summary>
/// Sorts a temperature into the classes of public advice (USDA Complete Guide to Home Canning, Guide 6, AIB 539, 2015:
/// 70-75 F 3 to 4 weeks, 60-65 F 5 to 6 weeks, below 60 F may not ferment, above 75 F may go soft).
/// </summary>
public static class WarmthClasses
{
    private const double CoolFromCelsius = 15.6;
    private const double UsualFromCelsius = 18.3;
    private const double WarmAboveCelsius = 23.9;
    private const double WarmRoomCelsius = 23;

    /// <summary>The class of a mean temperature, Celsius.</summary>
    public static Warmth Of(double celsius) => celsius switch
    {
        < CoolFromCelsius => Warmth.Cold,
        < UsualFromCelsius => Warmth.Cool,
        <= WarmAboveCelsius => Warmth.Usual,
        > WarmAboveCelsius => Warmth.Warm,
        _ => throw new ArgumentOutOfRangeException(nameof(celsius), celsius, "A finite temperature in Celsius is needed."),
    };

    /// <summary>Whether it is so warm that brine dries away sooner; false where nothing is known. This project's own choice: 23 C.</summary>
    public static bool IsWarmRoom(double? celsius) => celsius > WarmRoomCelsius;

    /// <summary>What that means for a jar, with its source; the weeks of kraut are told of kraut only.</summary>
    /// <param name="warmth">How warm it stands.</param>
    /// <param name="jar">The jar.</param>
    public static string Words(Warmth warmth, Jar jar) => Words(warmth, TestedRecipe.IsKraut(jar), TestedRecipe.FermentsInTheCold(jar));

    private static string Words(Warmth warmth, bool isKraut, bool fermentsInTheCold) => warmth switch
    {
        Warmth.Cold when fermentsInTheCold => $"Cold, and it goes slowly: {TestedRecipe.InTheCold}",
        Warmth.Cold => "Cold for a ferment: it goes slowly, and below 60 F (16 °C) it may not start at all (USDA Guide 6).",
        Warmth.Cool when !isKraut => "A cool place: everything comes later.",
        Warmth.Usual when !isKraut => "A usual kitchen.",
        Warmth.Cool => "A cool place: everything comes later. Kraut takes 5 to 6 weeks at 60 to 65 F (USDA Guide 6).",
        Warmth.Usual => "A usual kitchen. Kraut takes 3 to 4 weeks at 70 to 75 F (USDA Guide 6).",
        Warmth.Warm => "A warm place: everything comes sooner, and above 75 F (24 °C) it may go soft (USDA Guide 6).",
        _ => throw new ArgumentOutOfRangeException(nameof(warmth), warmth, "Not a class of warmth."),
    };
}

/// <summary>How warm a jar stands, in the classes of public advice.</summary>
public enum Warmth
{
    /// <summary>Below 60 F (15.6 C): slow, and may not ferment.</summary>
    Cold = 1,

    /// <summary>60 to 65 F (15.6 to 18.3 C): 5 to 6 weeks for kraut.</summary>
    Cool = 2,

    /// <summary>65 to 75 F (18.3 to 23.9 C): 3 to 4 weeks for kraut at its warmer half.</summary>
    Usual = 3,

    /// <summary>Above 75 F (23.9 C): fast, and may go soft.</summary>
    Warm = 4,
}
