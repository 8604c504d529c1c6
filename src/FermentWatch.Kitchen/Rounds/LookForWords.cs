namespace FermentWatch.Kitchen.Rounds;

/// <summary>What to look for on a round, in words.</summary>
public static class LookForWords
{
    /// <summary>A short question or order.</summary>
    public static string Of(LookFor lookFor) => lookFor switch
    {
        LookFor.BrineOverSolids => "Brine over everything?",
        LookFor.LeafUnder => "Leaf still under?",
        LookFor.NothingUp => "Nothing afloat?",
        LookFor.Bubbles => "Bubbles: normal",
        LookFor.WaterInRim => "Water in the rim?",
        LookFor.TrayUnder => "Tray under it?",
        LookFor.LetGasOut => "Let gas out",
        LookFor.OpenForSurface => "Open: surface and rim clean?",
        LookFor.BrineDriesFast => "Brine dries fast: level?",
        LookFor.Taste => "Taste",
        LookFor.MeasurePh => "Measure the pH",
        LookFor.Decide => "Into the cold, eat it, or leave it?",
        _ => throw new ArgumentOutOfRangeException(nameof(lookFor), lookFor, "Not something to look for."),
    };

    /// <summary>A word for a tile, where it asks for more than a look through the glass; null where it does not.</summary>
    public static string? InBrief(LookFor lookFor) => lookFor switch
    {
        LookFor.LetGasOut => "gas",
        LookFor.OpenForSurface => "open",
        LookFor.Taste => "taste",
        LookFor.MeasurePh => "pH",
        LookFor.Decide => "cold?",
        _ => null,
    };
}
