namespace FermentWatch.Kinetics.Observation;

/// <summary>A pH measured in the brine.</summary>
/// <param name="Day">Days since packing, zero or more; taken to the nearest quarter of an hour.</param>
/// <param name="Ph">The reading, 2 to 8.</param>
/// <param name="Method">How it was measured.</param>
public sealed record PhReading(double Day, double Ph, PhMethod Method);

/// <summary>How a pH was measured. It decides how far the model trusts the reading; what counts for a line is the kitchen's rule.</summary>
public enum PhMethod
{
    /// <summary>A meter checked in buffer: standard error 0.05.</summary>
    Meter,

    /// <summary>A probe that stands in the jar or was calibrated earlier: standard error 0.1.</summary>
    Probe,

    /// <summary>A paper strip read by eye: standard error 0.3 and coarse steps.</summary>
    Strip,
}

/// <summary>A titration of the brine.</summary>
/// <param name="Day">Days since packing, 0 to 366.</param>
/// <param name="PercentLactic">Titratable acidity to pH 8.2 as per cent lactic acid, 0 to 5.</param>
public sealed record AcidityReading(double Day, double PercentLactic);

/// <summary>Whether a jar was seen to bubble. It moves the tasting day, never a line.</summary>
/// <param name="Day">Days since packing, zero or more.</param>
/// <param name="Seen">Bubbles rose or the brine was pushed up; false: nothing moved.</param>
public sealed record GasReading(double Day, bool Seen);

/// <summary>A taste. It teaches the household's scale and moves the tasting day, never a line.</summary>
/// <param name="Day">Days since packing, zero or more.</param>
/// <param name="Verdict">What was said.</param>
public sealed record TasteReading(double Day, TasteAnswer Verdict);

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
