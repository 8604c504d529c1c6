using FermentWatch.Acts.Sensors;
using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Probes;
using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Web.Api.Answers;

/// <summary>A sensor.</summary>
/// <param name="Slug">Its name in topics.</param>
/// <param name="Name">What the household calls it.</param>
/// <param name="Place">The place it measures, if any.</param>
/// <param name="JarNumber">The jar its probe is in, if any.</param>
/// <param name="Last">Its last reading of each quantity.</param>
/// <param name="Warnings">What a person should look at, in words.</param>
/// <param name="ReadingsByVerdict">How many readings have each verdict.</param>
public sealed record SensorAnswer(
    string Slug, string Name, string? Place, int? JarNumber, IReadOnlyList<LastReadingAnswer> Last, IReadOnlyList<string> Warnings,
    IReadOnlyDictionary<string, long> ReadingsByVerdict)
{
    public static SensorAnswer Of(SensorView view) => new(view.Sensor.Slug, view.Sensor.Name, view.Place?.Name, view.Jar?.Number,
        [.. view.Last.Select(last => new LastReadingAnswer(last.Reading.Quantity, last.Reading.Value, last.Reading.MeasuredAt, last.Verdict))],
        [.. view.Warnings.Select(warning => warning.Words)],
        view.Verdicts.ToDictionary(entry => entry.Key.ToString(), entry => entry.Value));
}

/// <summary>The last reading of a quantity.</summary>
/// <param name="Quantity">What was measured; the unit follows from it: degrees Celsius, pH, millivolts, per cent relative humidity.</param>
/// <param name="ValueInUnitOfQuantity">The value.</param>
/// <param name="MeasuredAt">When.</param>
/// <param name="Verdict">What it is worth.</param>
public sealed record LastReadingAnswer(Quantity Quantity, double ValueInUnitOfQuantity, Instant MeasuredAt, Verdict Verdict);

/// <summary>A check of a probe in buffers, and what came of it.</summary>
/// <param name="Id">By which it is taken back.</param>
/// <param name="At">When.</param>
/// <param name="By">Who did it.</param>
/// <param name="Accepted">Whether readings by it can count.</param>
/// <param name="OffsetMillivolts">The potential at pH 7.</param>
/// <param name="SlopePercent">The slope, of the ideal.</param>
/// <param name="Faults">What speaks against it, in words.</param>
/// <param name="TakenBackAt">When it was taken back; null while it stands.</param>
/// <param name="TakenBackBy">Who took it back.</param>
public sealed record CalibrationAnswer(
    Guid Id, Instant At, string By, bool Accepted, double OffsetMillivolts, double SlopePercent, IReadOnlyList<string> Faults,
    Instant? TakenBackAt, string? TakenBackBy)
{
    public static CalibrationAnswer Of(ProbeCheck check)
    {
        ProbeCalibration calibration = check.Calibration;
        return new CalibrationAnswer(
            check.Id, check.At, check.By, calibration.IsAccepted, calibration.OffsetMillivolts, calibration.Slope * 100,
            [.. ProbeWords.Of(calibration.Faults)], check.VoidedAt, check.VoidedBy);
    }
}

/// <summary>The sensor that an offer became.</summary>
/// <param name="Slug">Its name in topics.</param>
public sealed record TakenSensorAnswer(string Slug);
