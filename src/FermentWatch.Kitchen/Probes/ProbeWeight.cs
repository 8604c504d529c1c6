namespace FermentWatch.Kitchen.Probes;

/// <summary>Whether a probe's reading counts for the lines, and if not, why. It is kept in any case.</summary>
public enum ProbeWeight
{
    /// <summary>It counts as a calibrated probe's.</summary>
    Counts = 1,

    /// <summary>The probe was never calibrated.</summary>
    NotCalibrated = 2,

    /// <summary>Its calibration is not accepted.</summary>
    BadCalibration = 3,

    /// <summary>Its calibration is too old.</summary>
    OldCalibration = 4,

    /// <summary>The probe is left standing in the jar: it informs, and never counts alone.</summary>
    LeftStanding = 5,

    /// <summary>The sample was outside the temperatures for which the calibration holds.</summary>
    SampleTemperature = 6,
}
