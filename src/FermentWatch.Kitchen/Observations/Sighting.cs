using FermentWatch.Kitchen.Households;

namespace FermentWatch.Kitchen.Observations;

/// <summary>Something was seen that asks for an action.</summary>
public sealed class Sighting : Observation
{
    public required SightingKind Kind { get; init; }

    /// <summary>What whoever saw it was then; a guest is no adult. Null where that was not written down yet.</summary>
    public MemberRole? SeenAs { get; init; }
}

/// <summary>What was seen.</summary>
public enum SightingKind
{
    PiecesUp = 1,

    /// <summary>A flat white film.</summary>
    Film = 2,

    /// <summary>Fuzz or colour, or cannot tell: treated as mould.</summary>
    FuzzOrUnsure = 3,

    BrineLow = 4,

    /// <summary>Pressure under a tight lid, or brine pushed out.</summary>
    Gas = 5,

    OffSmell = 6,

    Slime = 7,

    /// <summary>Anything else, told in the note.</summary>
    Other = 8,
}

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

/// <summary>The jar went into the cold, was finished, or was thrown out; why stands in the note.</summary>
public sealed class StageChange : Observation
{
    public required JarStage Stage { get; init; }

    /// <summary>Where a finished jar went; null of every other, and where nobody said.</summary>
    public Destination? Went { get; init; }

    /// <summary>To whom it was given; null where it was not, and where nobody said.</summary>
    public string? GivenTo { get; init; }
}

/// <summary>Where a jar goes that ends well.</summary>
public enum Destination
{
    /// <summary>Eaten up.</summary>
    Eaten = 1,

    /// <summary>Given to somebody.</summary>
    GivenAway = 2,

    /// <summary>Into the freezer, where it is stock of its own until it goes on.</summary>
    Frozen = 3,

    /// <summary>To canning by a tested procedure, of which this project has none.</summary>
    Canned = 4,
}

/// <summary>Where a jar is in its life.</summary>
public enum JarStage
{
    /// <summary>Working at room or cellar temperature.</summary>
    Fermenting = 1,

    /// <summary>In the cold store.</summary>
    Cold = 2,

    /// <summary>Eaten, given away, frozen or canned.</summary>
    Finished = 3,

    /// <summary>Thrown out.</summary>
    ThrownOut = 4,
}
