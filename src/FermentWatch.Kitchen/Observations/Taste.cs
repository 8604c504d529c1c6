namespace FermentWatch.Kitchen.Observations;

/// <summary>Somebody tasted it.</summary>
public sealed class Taste : Observation
{
    public required TasteVerdict Verdict { get; init; }
}
