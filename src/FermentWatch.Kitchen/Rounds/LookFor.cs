namespace FermentWatch.Kitchen.Rounds;

/// <summary>Something to look for or to do at a jar.</summary>
public enum LookFor
{
    /// <summary>Through the glass: brine stands over the solids.</summary>
    BrineOverSolids = 1,

    /// <summary>Through the glass: the leaf is still under.</summary>
    LeafUnder = 2,

    /// <summary>Through the glass: nothing has floated up.</summary>
    NothingUp = 3,

    /// <summary>Through the glass: bubbles, which are normal.</summary>
    Bubbles = 4,

    /// <summary>The rim of a water seal is filled.</summary>
    WaterInRim = 5,

    /// <summary>A tray stands under it; brine may be pushed out.</summary>
    TrayUnder = 6,

    /// <summary>A tight lid: let the gas out.</summary>
    LetGasOut = 7,

    /// <summary>Open it: film, fuzz, a clean rim.</summary>
    OpenForSurface = 8,

    /// <summary>Brine may dry away: check its level twice.</summary>
    BrineDriesFast = 9,

    /// <summary>Taste it.</summary>
    Taste = 10,

    /// <summary>Measure the pH.</summary>
    MeasurePh = 11,

    /// <summary>Past its tasting days: into the cold, eat it, or leave it.</summary>
    Decide = 12,
}

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
