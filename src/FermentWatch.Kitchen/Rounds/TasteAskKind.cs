namespace FermentWatch.Kitchen.Rounds;

/// <summary>What is asked about tasting on one date.</summary>
public enum TasteAskKind
{
    Nothing = 0,

    /// <summary>Taste it.</summary>
    Taste = 1,

    /// <summary>Its tasting days are over, asked this once: into the cold, eat it, or leave it.</summary>
    Decide = 2,
}
