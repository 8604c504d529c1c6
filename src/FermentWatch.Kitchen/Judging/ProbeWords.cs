using System.Globalization;
using FermentWatch.Kitchen.Probes;
using NodaTime;

namespace FermentWatch.Kitchen.Judging;

/// <summary>pH probes and their calibrations, in words.</summary>
public static class ProbeWords
{
    /// <summary>How often a probe in use is checked in buffer (common practice, no source).</summary>
    private static readonly Duration CheckedEvery = Duration.FromDays(7);

    /// <summary>What a reading is worth, and why.</summary>
    public static string Of(ProbeWeight weight) => weight switch
    {
        ProbeWeight.Counts => "checked in buffer within a day: it can be entered as a probe's reading",
        ProbeWeight.NotCalibrated => "never checked in buffer: it informs, and does not count",
        ProbeWeight.BadCalibration => "its calibration is not accepted: kept, and does not count",
        ProbeWeight.OldCalibration => "last checked in buffer more than a day before: it informs, and does not count",
        ProbeWeight.LeftStanding => "left standing in the jar: it informs, and never counts alone",
        ProbeWeight.SampleTemperature => "the sample is too cold or too warm for its calibration: it does not count",
        _ => throw new ArgumentOutOfRangeException(nameof(weight), weight, "Not a weight."),
    };

    /// <summary>A calibration's figures.</summary>
    public static string Of(ProbeCalibration calibration) => string.Create(
        CultureInfo.InvariantCulture, $"offset {calibration.OffsetMillivolts:0.#} mV at pH 7, slope {calibration.Slope * 100:0.#} % of the ideal");

    /// <summary>What speaks against a calibration, a sentence each; none if it is accepted.</summary>
    public static IEnumerable<string> Of(CalibrationFaults faults)
    {
        if (faults.HasFlag(CalibrationFaults.Offset))
            yield return "The potential at pH 7 is more than 30 mV from zero: clean the probe, or its reference is spent.";
        if (faults.HasFlag(CalibrationFaults.SlopeLow))
            yield return "The slope is below 90 %: the glass is worn or dirty, or a buffer is spoilt.";
        if (faults.HasFlag(CalibrationFaults.SlopeHigh))
            yield return "The slope is above 105 %: a buffer or its temperature is not what was entered.";
        if (faults.HasFlag(CalibrationFaults.Bent))
            yield return "The three buffers do not lie on one line: one of them is spoilt, or they were mixed up.";
    }

    /// <summary>How old a calibration is.</summary>
    public static string Age(ProbeCalibration calibration, Instant now)
    {
        Duration age = now - calibration.At;
        return age.TotalHours < 36
            ? string.Create(CultureInfo.InvariantCulture, $"{Math.Max(0, age.TotalHours):0} hours old")
            : string.Create(CultureInfo.InvariantCulture, $"{age.TotalDays:0} days old");
    }

    /// <summary>How a probe changed.</summary>
    public static string Of(ProbeDrift drift) => string.Create(CultureInfo.InvariantCulture,
        $"Since the calibration before, {drift.Elapsed.TotalDays:0} days earlier: offset {Signed(drift.OffsetMillivolts, "0.#")} mV, slope "
        + $"{Signed(drift.Slope * 100, "0.#")} points; a brine of pH 4.0 was read {Signed(drift.PhAtFour, "0.00")}.");

    /// <summary>What a person should look at.</summary>
    public static IEnumerable<SensorWarning> Warnings(ProbeStanding probe, Instant now)
    {
        if (probe.Calibration is null)
            yield return new SensorWarning(SensorWarningKind.Calibration, "This probe was never checked in buffer.");
        else if (!probe.Calibration.IsAccepted)
            yield return new SensorWarning(
                SensorWarningKind.Calibration, $"Its calibration is not accepted. {string.Join(" ", Of(probe.Calibration.Faults))}");
        else if (now - probe.Calibration.At > CheckedEvery)
            yield return new SensorWarning(SensorWarningKind.Calibration, string.Create(CultureInfo.InvariantCulture,
                $"Last checked in buffer {(now - probe.Calibration.At).TotalDays:0} days ago. Check it in two buffers this week; until then it "
                + $"informs only."));
        if (probe.Drift is { CastsDoubt: true })
            yield return new SensorWarning(SensorWarningKind.Drift,
                $"It drifted: what it read between its last two calibrations is in doubt. {Of(probe.Drift)}");
    }

    private static string Signed(double value, string format) =>
        value.ToString($"+{format};-{format};0", CultureInfo.InvariantCulture);
}
