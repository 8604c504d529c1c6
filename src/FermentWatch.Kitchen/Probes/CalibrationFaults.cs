namespace FermentWatch.Kitchen.Probes;

/// <summary>Why a calibration is not accepted. More than one may hold.</summary>
[Flags]
public enum CalibrationFaults
{
    /// <summary>It is accepted.</summary>
    None = 0,

    /// <summary>The potential at pH 7 is more than 30 mV from zero.</summary>
    Offset = 1,

    /// <summary>The slope is below 90 % of the ideal: the glass is worn or dirty, or a buffer is spoilt.</summary>
    SlopeLow = 2,

    /// <summary>The slope is above 105 % of the ideal: a buffer or a temperature is not what it was said to be.</summary>
    SlopeHigh = 4,

    /// <summary>Three buffers do not lie on one line.</summary>
    Bent = 8,
}
