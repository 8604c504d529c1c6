using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using NodaTime;

namespace FermentWatch.Kitchen.ColdStore;

/// <summary>
/// What is left in a jar, reckoned from what was taken out of it, and since when it is open. Nobody weighs what is left: it is rough.
/// </summary>
public static class LeftInJar
{
    /// <summary>Of less than this share nothing is left, as far as portions told in eighths and thirds can tell.</summary>
    public const double EmptyFraction = 0.03;

    /// <summary>Share of the full jar that is left, 0 to 1.</summary>
    public static double FractionOf(Jar jar) => Math.Clamp(1 - Portions(jar).Sum(portion => FractionOf(jar, portion)), 0, 1);

    /// <summary>
    /// Share of the full jar that a portion is, 0 or more. A volume or a weight is held against what comes to the table of what went in
    /// (<see cref="Servings"/>).
    /// </summary>
    public static double FractionOf(Jar jar, PortionTaken portion)
    {
        if (portion.Fraction is { } said)
            return said;
        double litres = portion.Litres ?? (portion.Kilograms ?? 0) / Servings.KilogramsPerLitre(jar.Cut);
        return litres / Servings.LitresOf(jar);
    }

    /// <summary>What is left, roughly; null where nothing was taken out.</summary>
    public static string? Words(Jar jar) => !Portions(jar).Any() ? null : FractionOf(jar) switch
    {
        < EmptyFraction => "nothing left, as reckoned",
        < 0.19 => "little left",
        < 0.29 => "about a quarter left",
        < 0.42 => "about a third left",
        < 0.58 => "about half left",
        < 0.71 => "about two thirds left",
        < 0.82 => "about three quarters left",
        _ => "most of it left",
    };

    /// <summary>When it was first opened to be eaten from: the first portion, or when somebody said so; null while it is closed.</summary>
    public static Instant? OpenSince(Jar jar) => jar.Standing.FirstOrDefault(each => each is PortionTaken or JarOpened)?.At;

    private static IEnumerable<PortionTaken> Portions(Jar jar) => jar.Standing.OfType<PortionTaken>();
}
