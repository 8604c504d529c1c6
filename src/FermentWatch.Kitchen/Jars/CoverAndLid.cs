namespace FermentWatch.Kitchen.Jars;

/// <summary>What holds the vegetables under the brine.</summary>
public enum Cover
{
    /// <summary>A leaf or a piece of the vegetable, pressed down.</summary>
    Leaf = 1,

    /// <summary>A weight of glass or stone.</summary>
    Weight = 2,

    /// <summary>A bag filled with brine, which also closes the jar; left alone until the bubbling stops.</summary>
    BrineBag = 3,
}

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
