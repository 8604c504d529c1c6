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
