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

/// <summary>
/// The ideal response of a pH electrode: ln 10 R T / F millivolts a pH, falling as the pH rises. Gas and Faraday constants are the
/// exact values of the SI of 2019.
/// </summary>
public static class Nernst
{
    private const double GasConstant = 8.314462618;
    private const double FaradayConstant = 96_485.33212;
    private const double ZeroCelsiusKelvin = 273.15;

    /// <summary>Millivolts a pH at a temperature, above absolute zero.</summary>
    public static double MillivoltsPerPh(double celsius)
    {
        if (!(celsius > -ZeroCelsiusKelvin && double.IsFinite(celsius)))
            throw new ArgumentOutOfRangeException(nameof(celsius), celsius, "A temperature above -273.15 C belongs here.");
        return Math.Log(10) * GasConstant * (celsius + ZeroCelsiusKelvin) / FaradayConstant * 1000;
    }
}
