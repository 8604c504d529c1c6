using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Jars;

namespace FermentWatch.Kitchen.ColdStore;

/// <summary>How long a jar is published to keep in the cold, the stricter end where advice has a range.</summary>
/// <param name="Days">Days in the cold after which it is eaten first.</param>
/// <param name="Words">What is published, in a sentence.</param>
/// <param name="Source">Who says so.</param>
public sealed record KeepingTime(int Days, string Words, string Source)
{
    private static readonly KeepingTime Usual = new(120, "Public advice keeps it several months.",
        "USDA Complete Guide to Home Canning, Guide 6, AIB 539, 2015: kraut several months, pickles 4 to 6 months, covered in the refrigerator; the "
        + "stricter end of pickles is taken");

    /// <summary>That of its vegetable alone; where nothing is published of it, that of pickles.</summary>
    public static KeepingTime Of(Jar jar) => TestedRecipe.MainVegetable(jar)?.KeptColdDays is { } days
        ? new KeepingTime(days, "Advice on keeping kimchi runs from one week to four.",
        "Colorado State University Extension (older, and 2025); four weeks: trade practice; the middle is taken")
        : Usual;
}
