namespace FermentWatch.Kitchen.Guides;

/// <summary>Other things people see and ask about, with what public advice says, word for word where it disagrees.</summary>
/// <param name="Sign">What is seen.</param>
/// <param name="Advice">What it is and what to do.</param>
/// <param name="Source">Who says so.</param>
public sealed record MoreSigns(string Sign, string Advice, string Source)
{
    /// <summary>Every one.</summary>
    public static readonly IReadOnlyList<MoreSigns> All =
    [
        new("Soft", "Too little salt, uneven salt, too warm, or air pockets. Throw it out if the smell is not clean and acid.", "Oregon State SP 50-745"),
        new("Pink", "Yeast, from uneven or too much salt. Throw it out if it is slimy.", "Oregon State SP 50-745"),
        new("Dark", "Wrong salt, warmth or light.", "Oregon State SP 50-745"),
        new("The pH climbs again", "Film yeasts eat lactic acid, and the pH climbs to where other bacteria grow. Measure daily; what rises again is thrown out.",
            "secondary cucumber fermentation, 2012 (Appl. Environ. Microbiol.); Univ. of Minnesota Extension 2021"),
        new("Too warm", "Above 75 F (24 C) it may go soft, above 80 F (27 C) soft and spoiled. Move it somewhere cooler.", "USDA Guide 6; Univ. of New Hampshire; Penn State"),
        new("Too cold", "Below 60 F (16 C) it may not ferment. Move it somewhere warmer and measure the pH.", "USDA Guide 6"),
    ];
}
