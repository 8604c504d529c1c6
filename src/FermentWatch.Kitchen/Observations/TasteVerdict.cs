namespace FermentWatch.Kitchen.Observations;

/// <summary>How a taste compares with how sour the household wants it.</summary>
public enum TasteVerdict
{
    NotYet = 1,
    Nearly = 2,
    Right = 3,
    PastIt = 4,
}
