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
