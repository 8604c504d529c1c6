using NodaTime;

namespace FermentWatch.Kitchen.Probes;

/// <summary>
/// What a probe's response was found to be in two or three buffers. Model: potential = offset - slope x Nernst(temperature) x
/// (pH - 7), with the slope as a share of the ideal, so that buffers and sample may have temperatures of their own. Two buffers
/// fix it, three are fitted by least squares. Temperature compensation corrects the slope only, not what warmth does to the
/// sample itself.
/// </summary>
public sealed class ProbeCalibration
{
    /// <summary>Furthest accepted potential at pH 7 from zero, in mV. Common practice, no source.</summary>
    public const double LargestOffsetMillivolts = 30;

    /// <summary>Least accepted share of the ideal slope. Common practice; USP chapter 791 since 2018 uses 90 to 105 %.</summary>
    public const double LeastSlope = 0.90;

    /// <summary>Largest accepted share of the ideal slope; source as for <see cref="LeastSlope"/>.</summary>
    public const double LargestSlope = 1.05;

    /// <summary>Buffers closer than this tell no slope. Common practice, no source: pH 4 and 7, or 7 and 10, are three apart.</summary>
    public const double LeastSpanPh = 2;

    /// <summary>How far one of three buffers may lie off the line, in pH. Common practice, no source.</summary>
    public const double LargestMisfitPh = 0.1;

    private const double NeutralPh = 7;

    private ProbeCalibration(double offsetMillivolts, double slope, double misfitPh, Instant at)
    {
        OffsetMillivolts = offsetMillivolts;
        Slope = slope;
        MisfitPh = misfitPh;
        At = at;
    }

    /// <summary>The potential at pH 7.</summary>
    public double OffsetMillivolts { get; }

    /// <summary>The slope as a share of the ideal; 1 is ideal.</summary>
    public double Slope { get; }

    /// <summary>How far, in pH, the buffer that fits worst lies off the line; 0 for two buffers.</summary>
    public double MisfitPh { get; }

    /// <summary>When it was done.</summary>
    public Instant At { get; }

    /// <summary>What speaks against it.</summary>
    public CalibrationFaults Faults =>
        (Math.Abs(OffsetMillivolts) > LargestOffsetMillivolts ? CalibrationFaults.Offset : CalibrationFaults.None)
        | (Slope < LeastSlope ? CalibrationFaults.SlopeLow : CalibrationFaults.None)
        | (Slope > LargestSlope ? CalibrationFaults.SlopeHigh : CalibrationFaults.None)
        | (MisfitPh > LargestMisfitPh ? CalibrationFaults.Bent : CalibrationFaults.None);

    /// <summary>Whether readings by it count.</summary>
    public bool IsAccepted => Faults == CalibrationFaults.None;

    /// <summary>Works a calibration out; null with a reason where the buffers cannot tell one.</summary>
    /// <param name="points">Two or three readings in different buffers.</param>
    /// <param name="at">When they were taken.</param>
    /// <param name="wrong">What was wrong and what would be right.</param>
    public static ProbeCalibration? Of(IReadOnlyList<BufferReading> points, Instant at, out string? wrong)
    {
        wrong = WhatIsWrong(points);
        if (wrong is not null)
            return null;

        // Potential is linear in x = -Nernst (pH - 7): slope and offset by ordinary least squares.
        double[] x = [.. points.Select(point => -Nernst.MillivoltsPerPh(point.Celsius) * (point.Ph - NeutralPh))];
        double meanX = x.Average(), meanE = points.Average(point => point.Millivolts);
        double slope = points.Zip(x, (point, at) => (at - meanX) * (point.Millivolts - meanE)).Sum() / x.Sum(at => (at - meanX) * (at - meanX));
        double offset = meanE - (slope * meanX);
        if (slope <= 0)
        {
            wrong = "The potential rises with the pH; the buffers are swapped, or the probe is connected the wrong way round.";
            return null;
        }
        double misfit = points.Max(point => Math.Abs(PhOf(point.Millivolts, point.Celsius, offset, slope) - point.Ph));
        return new ProbeCalibration(offset, slope, misfit, at);
    }

    /// <summary>The pH of a sample.</summary>
    /// <param name="millivolts">What the probe shows in it.</param>
    /// <param name="sampleCelsius">The temperature of the sample.</param>
    public double PhOf(double millivolts, double sampleCelsius) => PhOf(millivolts, sampleCelsius, OffsetMillivolts, Slope);

    private static double PhOf(double millivolts, double celsius, double offset, double slope) =>
        NeutralPh + ((offset - millivolts) / (slope * Nernst.MillivoltsPerPh(celsius)));

    private static string? WhatIsWrong(IReadOnlyList<BufferReading> points)
    {
        if (points.Count is < 2 or > 3)
            return $"There are {points.Count} buffers; two or three belong here.";
        if (points.DistinctBy(point => point.Buffer).Count() != points.Count)
            return "A buffer stands there twice; each must be another.";
        foreach (BufferReading point in points)
        {
            if (!(point.Celsius is >= BufferTable.LowestCelsius and <= BufferTable.HighestCelsius))
                return $"A buffer is at {point.Celsius:0.#} C; 0 to 50 C belongs here.";
            if (!(Math.Abs(point.Millivolts) <= 1_000))
                return $"A buffer shows {point.Millivolts:0.#} mV; -1000 to 1000 mV belongs here.";
        }
        return points.Max(point => point.Ph) - points.Min(point => point.Ph) < LeastSpanPh
            ? "The buffers are too close to each other to tell the slope; two pH apart belongs here, like 4 and 7."
            : null;
    }
}
