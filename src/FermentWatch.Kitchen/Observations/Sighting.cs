using FermentWatch.Kitchen.Households;

namespace FermentWatch.Kitchen.Observations;

/// <summary>Something was seen that asks for an action.</summary>
public sealed class Sighting : Observation
{
    public required SightingKind Kind { get; init; }

    /// <summary>What whoever saw it was then; a guest is no adult. Null where that was not written down yet.</summary>
    public MemberRole? SeenAs { get; init; }
}
