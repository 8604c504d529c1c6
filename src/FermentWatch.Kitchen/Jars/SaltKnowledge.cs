namespace FermentWatch.Kitchen.Jars;

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
