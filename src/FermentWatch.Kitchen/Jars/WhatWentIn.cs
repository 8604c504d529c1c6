namespace FermentWatch.Kitchen.Jars;

/// <summary>One thing that went into a jar.</summary>
/// <param name="Produce">Its name in the catalogue of produce, such as <c>cabbage</c>, or a seasoning's own name.</param>
/// <param name="MassKilograms">Prepared mass, above zero.</param>
public sealed record Portion(string Produce, double MassKilograms);

/// <summary>The salt of a jar.</summary>
/// <param name="Knowledge">How it is known.</param>
/// <param name="Percent">Per cent of vegetables and added water together; null when salted by taste.</param>
public sealed record Salting(SaltKnowledge Knowledge, double? Percent);

/// <summary>How the salt of a jar is known.</summary>
public enum SaltKnowledge
{
    /// <summary>Weighed, or worked out by weight.</summary>
    Weighed = 1,

    /// <summary>By spoon; how much that is differs with the salt.</summary>
    Measured = 2,

    /// <summary>By taste: somewhere between 1.5 and 3.5 %.</summary>
    ByTaste = 3,
}

/// <summary>Brine of an earlier jar that was put in to start this one.</summary>
/// <param name="FromJar">Number of that jar.</param>
/// <param name="MassKilograms">How much of it, above zero.</param>
/// <param name="AcidityPercentLactic">Its acidity as it was expected when it was taken, per cent lactic.</param>
public sealed record Starter(int FromJar, double MassKilograms, double AcidityPercentLactic);

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
