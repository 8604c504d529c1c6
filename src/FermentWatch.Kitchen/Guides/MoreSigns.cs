using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Households;

namespace FermentWatch.Kitchen.Guides;

/// <summary>Other things people see and ask about, with what public advice says, word for word where it disagrees.</summary>
/// <param name="Sign">What is seen.</param>
/// <param name="Advice">What it is and what to do.</param>
/// <param name="Source">Who says so.</param>
public sealed record MoreSigns(string Sign, string Advice, string Source)
{
    /// <summary>Every one, as a household with this policy has it.</summary>
    public static IEnumerable<MoreSigns> For(MouldPolicy policy) =>
        All.Select(sign => sign.Sign == Pink ? sign with { Advice = $"{sign.Advice} {Here(policy)}" } : sign);

    private const string Pink = "Pink";

    private static string Here(MouldPolicy policy) => policy == MouldPolicy.ThrowOut
        ? "This household follows the stricter advice: throw it out."
        : "This household: throw it out if it grows on top, is slimy, or you cannot tell; else measure the pH and look daily.";

    /// <summary>Every one, without a household's policy.</summary>
    public static readonly IReadOnlyList<MoreSigns> All =
    [
        new("Soft", "Too little salt, uneven salt, too warm, or air pockets. Throw it out if the smell is not clean and acid.",
            "Oregon State SP 50-745"),
        new(Pink, "Oregon State: yeast, from uneven or too much salt; it goes only if it is slimy. Ask Extension: what grows pink is thrown out.",
            "Oregon State SP 50-745; Ask Extension"),
        new("Dark", "Wrong salt, warmth or light.", "Oregon State SP 50-745"),
        new("The pH climbs again",
        "Film yeasts eat lactic acid, and the pH climbs to where other bacteria grow. Measure daily; what rises again is thrown out.",
            "secondary cucumber fermentation, 2012 (Appl. Environ. Microbiol.); Univ. of Minnesota Extension 2021"),
        new("Too warm", "Above 75 F (24 C) it may go soft, above 80 F (27 C) soft and spoiled. Move it somewhere cooler.",
            "USDA Guide 6; Univ. of New Hampshire; Penn State"),
        new("Too cold", $"Below 60 F (16 C) kraut may not ferment: move it somewhere warmer and measure the pH. {TestedRecipe.WhoGoesOnInTheCold} "
            + $"go on slowly: {TestedRecipe.InTheCold}", "USDA Guide 6; reviews of kimchi; Kim S.D. et al. 1999"),
    ];
}
