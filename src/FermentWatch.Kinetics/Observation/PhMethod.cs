namespace FermentWatch.Kinetics.Observation;

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
