using FermentWatch.Kitchen.Probes;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Service.Api.Answers;

/// <summary>A check of a probe in buffers, and what came of it.</summary>
/// <param name="At">When.</param>
/// <param name="By">Who did it.</param>
/// <param name="Accepted">Whether readings by it can count.</param>
/// <param name="OffsetMillivolts">The potential at pH 7.</param>
/// <param name="SlopePercent">The slope, of the ideal.</param>
/// <param name="Faults">What speaks against it, in words.</param>
public sealed record CalibrationAnswer(Instant At, string By, bool Accepted, double OffsetMillivolts, double SlopePercent, IReadOnlyList<string> Faults)
{
    public static CalibrationAnswer Of(ProbeCheck check)
    {
        ProbeCalibration calibration = check.Calibration;
        return new CalibrationAnswer(
            check.At, check.By, calibration.IsAccepted, calibration.OffsetMillivolts, calibration.Slope * 100, [.. ProbeWords.Of(calibration.Faults)]);
    }
}
