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
