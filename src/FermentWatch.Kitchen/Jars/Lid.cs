namespace FermentWatch.Kitchen.Jars;

/// <summary>How a jar is closed while it works.</summary>
public enum Lid
{
    /// <summary>Lets gas out by itself.</summary>
    Vented = 1,

    /// <summary>A rim filled with water.</summary>
    WaterSealed = 2,

    /// <summary>Screwed tight: gas must be let out by hand.</summary>
    Tight = 3,

    /// <summary>A cloth.</summary>
    Cloth = 4,
}
