using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Jars;
using NodaTime;

namespace FermentWatch.Kitchen.ColdStore;

/// <summary>How long a jar is published to keep in the cold.</summary>
/// <param name="Days">Days in the cold after which it is eaten first.</param>
/// <param name="LeastDays">The stricter end of what is published, days in the cold.</param>
/// <param name="MostDays">The other end.</param>
/// <param name="Words">What is published, in a sentence.</param>
/// <param name="Source">Who says so.</param>
public sealed record KeepingTime(int Days, int LeastDays, int MostDays, string Words, string Source)
{
    /// <summary>Of what nothing is published alone.</summary>
    public const int UsualDays = 120;

    /// <summary>What is said of a jar that is open. Nobody is known here to have published how long one keeps.</summary>
    public const string Opened = "An open jar comes first: a clean fork each time, what is left pressed under its brine, the lid on, back into the "
        + "cold at once. How long it keeps once open is not published as far as we know: eat it up before you open the next.";

    /// <summary>Who says so.</summary>
    public const string OpenedSource = "common practice, no source";

    /// <summary>Six months, the late end of pickles.</summary>
    private const int MostUsualDays = 180;

    /// <summary>One week and four, the ends of kimchi.</summary>
    private const int LeastKimchiDays = 7, MostKimchiDays = 28;

    private static readonly KeepingTime Usual = new(UsualDays, UsualDays, MostUsualDays,
        "Public advice keeps it several months.",
        "USDA Complete Guide to Home Canning, Guide 6, AIB 539, 2015: kraut several months, pickles 4 to 6 months, covered in the refrigerator; the "
        + "stricter end of pickles is taken");

    /// <summary>That of its vegetable alone; where nothing is published of it, that of pickles.</summary>
    public static KeepingTime Of(Jar jar) => TestedRecipe.MainVegetable(jar)?.KeptColdDays is { } days
        ? new KeepingTime(days, LeastKimchiDays, MostKimchiDays, "Advice on keeping kimchi runs from one week to four.",
        "Colorado State University Extension (older, and 2025); four weeks: trade practice; the middle is taken")
        : Usual;

    /// <summary>The days by which it is eaten as published, the stricter end first.</summary>
    /// <param name="since">The day it went into the cold.</param>
    public (LocalDate Least, LocalDate Most) EatBy(LocalDate since) => (since.PlusDays(LeastDays), since.PlusDays(MostDays));
}
