namespace FermentWatch.Kitchen.Observations;

/// <summary>Something was done about a jar: a small trouble was seen to, or it was decided to leave it standing.</summary>
public sealed class Handling : Observation
{
    public required HandlingKind Kind { get; init; }
}

/// <summary>What was done.</summary>
public enum HandlingKind
{
    /// <summary>Pieces were pressed under; those that were dry were taken out.</summary>
    PressedUnder = 1,

    /// <summary>A flat film was skimmed off.</summary>
    Skimmed = 2,

    /// <summary>Brine was topped up with salt water, never plain.</summary>
    BrineToppedUp = 3,

    /// <summary>Gas was let out; what ran over was wiped up and topped up.</summary>
    GasLetOut = 4,

    /// <summary>Past its tasting days, and left to go on.</summary>
    LeftStanding = 5,
}
