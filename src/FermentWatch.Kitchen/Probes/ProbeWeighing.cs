using NodaTime;

namespace FermentWatch.Kitchen.Probes;

/// <summary>Decides what a probe's reading is worth.</summary>
public static class ProbeWeighing
{
    /// <summary>
    /// How old a calibration may be. A reading below a line counts only from a probe checked in buffer that day; a day here leaves
    /// room for checking in the evening and measuring in the morning.
    /// </summary>
    public static readonly Duration OldestCalibration = Duration.FromDays(1);

    /// <summary>What the reading is worth.</summary>
    /// <param name="calibration">The last calibration before it, null if there was none.</param>
    /// <param name="measuredAt">When it was taken.</param>
    /// <param name="sampleCelsius">The temperature of the sample.</param>
    /// <param name="leftStanding">Whether the probe stays in the jar.</param>
    public static ProbeWeight Weigh(ProbeCalibration? calibration, Instant measuredAt, double sampleCelsius, bool leftStanding)
    {
        if (calibration is null || calibration.At > measuredAt)
            return ProbeWeight.NotCalibrated;
        if (!calibration.IsAccepted)
            return ProbeWeight.BadCalibration;
        if (!(sampleCelsius is >= BufferTable.LowestCelsius and <= BufferTable.HighestCelsius))
            return ProbeWeight.SampleTemperature;
        if (leftStanding)
            return ProbeWeight.LeftStanding;
        return measuredAt - calibration.At > OldestCalibration ? ProbeWeight.OldCalibration : ProbeWeight.Counts;
    }
}

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
