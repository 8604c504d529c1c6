using FermentWatch.Kitchen.Probes;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Service.Api.Answers;

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
