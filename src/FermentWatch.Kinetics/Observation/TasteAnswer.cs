namespace FermentWatch.Kinetics.Observation;

/// <summary>What somebody said after tasting, measured on the household's own scale.</summary>
public enum TasteAnswer
{
    /// <summary>Not sour enough by far.</summary>
    NotYet,

    /// <summary>A day or so short.</summary>
    Nearly,

    /// <summary>As it should be.</summary>
    Right,

    /// <summary>Sourer than wanted.</summary>
    PastIt,
}
