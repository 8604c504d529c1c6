namespace FermentWatch.Kitchen.Observations;

/// <summary>Somebody tasted it.</summary>
public sealed class Taste : Observation
{
    public required TasteVerdict Verdict { get; init; }
}

/// <summary>How a taste compares with how sour the household wants it.</summary>
public enum TasteVerdict
{
    NotYet = 1,
    Nearly = 2,
    Right = 3,
    PastIt = 4,
}
