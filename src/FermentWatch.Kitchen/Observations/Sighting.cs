namespace FermentWatch.Kitchen.Observations;

/// <summary>Something was seen that asks for an action.</summary>
public sealed class Sighting : Observation
{
    public required SightingKind Kind { get; init; }
}
