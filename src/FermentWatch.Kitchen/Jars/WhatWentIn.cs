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
