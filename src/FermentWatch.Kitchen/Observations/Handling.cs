namespace FermentWatch.Kitchen.Observations;

/// <summary>Something was done about a jar: a small trouble was seen to, or it was decided to leave it standing.</summary>
public sealed class Handling : Observation
{
    public required HandlingKind Kind { get; init; }
}
