using NodaTime;

namespace FermentWatch.Kitchen.Probes;

/// <summary>How a probe changed from one calibration to the next.</summary>
/// <param name="OffsetMillivolts">Change of the potential at pH 7.</param>
/// <param name="Slope">Change of the slope, as a share of the ideal.</param>
/// <param name="PhAtFour">How much lower (below zero) or higher the older calibration would have read a brine of pH 4.0 by the newer, at 20
/// C.</param>
/// <param name="Elapsed">Time between the two.</param>
public sealed record ProbeDrift(double OffsetMillivolts, double Slope, double PhAtFour, Duration Elapsed)
{
    /// <summary>More than this at pH 4 casts doubt on what was read between the two. Common practice, no source.</summary>
    public const double LargestPhAtFour = 0.1;

    private const double BrineCelsius = 20;
    private const double BrinePh = 4.0;

    /// <summary>Whether what was read between the two calibrations is in doubt.</summary>
    public bool CastsDoubt => Math.Abs(PhAtFour) > LargestPhAtFour;

    /// <summary>The drift between two calibrations of one probe, the older first.</summary>
    public static ProbeDrift Between(ProbeCalibration older, ProbeCalibration newer)
    {
        double millivolts = newer.OffsetMillivolts - (newer.Slope * Nernst.MillivoltsPerPh(BrineCelsius) * (BrinePh - 7));
        return new ProbeDrift(
            newer.OffsetMillivolts - older.OffsetMillivolts,
            newer.Slope - older.Slope,
            older.PhOf(millivolts, BrineCelsius) - BrinePh,
            newer.At - older.At);
    }
}
