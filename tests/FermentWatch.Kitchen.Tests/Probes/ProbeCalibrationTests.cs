using FermentWatch.Kitchen.Probes;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Probes;

public sealed class ProbeCalibrationTests
{
    private static readonly Instant _at = Instant.FromUtc(2026, 10, 4, 8, 0);

    // 175 mV over 2.995 pH x 59.16 mV: derived from the ideal slope.
    [Fact]
    public void Of_SlopeOf98_8Percent_IsAccepted()
    {
        ProbeCalibration calibration = TwoPoint(-15, 160);

        Assert.Equal(0.988, calibration.Slope, 0.0005);
        Assert.Equal(-15, calibration.OffsetMillivolts, 0.001);
        Assert.Equal(0, calibration.MisfitPh, 1e-9);
        Assert.True(calibration.IsAccepted);
    }

    // 145 mV over 2.995 pH x 59.16 mV.
    [Fact]
    public void Of_SlopeOf81_8Percent_Fails()
    {
        ProbeCalibration calibration = TwoPoint(15, 160);

        Assert.Equal(0.818, calibration.Slope, 0.0005);
        Assert.Equal(CalibrationFaults.SlopeLow, calibration.Faults);
    }

    [Theory]
    [InlineData(31, 208, CalibrationFaults.Offset)]
    [InlineData(-31, 146, CalibrationFaults.Offset)]
    [InlineData(0, 190, CalibrationFaults.SlopeHigh)]
    [InlineData(40, 160, CalibrationFaults.Offset | CalibrationFaults.SlopeLow)]
    [InlineData(30, 207, CalibrationFaults.None)]
    public void Faults_OffsetAndSlope_AreJudged(double neutral, double acid, CalibrationFaults expected) =>
        Assert.Equal(expected, TwoPoint(neutral, acid).Faults);

    // +150 mV at 10 C with offset 0 is pH 4.330; with the 25 C slope by mistake it would be 4.464.
    [Fact]
    public void PhOf_ColdSample_UsesTheSlopeAtItsTemperature()
    {
        double ideal = Nernst.MillivoltsPerPh(25);
        ProbeCalibration calibration = TwoPoint(0, ideal * 2.995);

        Assert.Equal(1, calibration.Slope, 1e-9);
        Assert.Equal(4.330, calibration.PhOf(150, 10), 0.0005);
        Assert.Equal(4.464, calibration.PhOf(150, 25), 0.0005);
    }

    [Fact]
    public void Of_BuffersAtTheirOwnTemperatures_FindsTheProbeThatMadeThem()
    {
        const double Offset = 12, Slope = 0.95;
        BufferReading Made(ReferenceBuffer buffer, double celsius) => new(
            buffer, Offset - (Slope * Nernst.MillivoltsPerPh(celsius) * (BufferTable.PhAt(buffer, celsius) - 7)), celsius);

        ProbeCalibration? calibration = ProbeCalibration.Of(
            [Made(ReferenceBuffer.Phthalate4, 8), Made(ReferenceBuffer.Technical7, 21), Made(ReferenceBuffer.Carbonate10, 33)], _at,
            out string? wrong);

        Assert.Null(wrong);
        Assert.Equal(Offset, calibration!.OffsetMillivolts, 1e-9);
        Assert.Equal(Slope, calibration.Slope, 1e-9);
        Assert.Equal(0, calibration.MisfitPh, 1e-9);
        Assert.Equal(3.8, calibration.PhOf(Offset - (Slope * Nernst.MillivoltsPerPh(15) * (3.8 - 7)), 15), 1e-9);
    }

    [Fact]
    public void Of_ThreeBuffersOneSpoilt_IsBent()
    {
        ProbeCalibration calibration = ProbeCalibration.Of(
            [new(ReferenceBuffer.Phthalate4, 177, 25), new(ReferenceBuffer.Technical7, 0, 25), new(ReferenceBuffer.Carbonate10, -150, 25)],
            _at, out _)!;

        Assert.InRange(calibration.MisfitPh, 0.1, 0.3);
        Assert.Equal(CalibrationFaults.Bent, calibration.Faults);
    }

    [Fact]
    public void Of_BuffersThatCannotTell_SaysWhatWouldBeRight()
    {
        Assert.Equal("There are 1 buffers; two or three belong here.", Wrong(new BufferReading(ReferenceBuffer.Technical7, 0, 25)));
        Assert.Equal(
            "A buffer stands there twice; each must be another.",
            Wrong(new(ReferenceBuffer.Technical7, 0, 25), new(ReferenceBuffer.Technical7, 1, 25)));
        Assert.StartsWith(
            "The buffers are too close to each other",
            Wrong(new(ReferenceBuffer.Technical7, 0, 25), new(ReferenceBuffer.Phosphate686, 8, 25)));
        Assert.StartsWith(
            "The potential rises with the pH",
            Wrong(new(ReferenceBuffer.Phthalate4, -177, 25), new(ReferenceBuffer.Technical7, 0, 25)));
        Assert.Equal(
            "A buffer is at 60 C; 0 to 50 C belongs here.",
            Wrong(new(ReferenceBuffer.Phthalate4, 177, 60), new(ReferenceBuffer.Technical7, 0, 25)));
        Assert.Equal(
            "A buffer shows NaN mV; -1000 to 1000 mV belongs here.",
            Wrong(new(ReferenceBuffer.Phthalate4, double.NaN, 25), new(ReferenceBuffer.Technical7, 0, 25)));
    }

    [Fact]
    public void Between_OffsetMoved_TellsWhatItDoesToABrine()
    {
        ProbeCalibration older = TwoPoint(0, 177);
        ProbeCalibration newer = ProbeCalibration.Of(
            [new(ReferenceBuffer.Technical7, 9, 25), new(ReferenceBuffer.Phthalate4, 186, 25)], _at + Duration.FromDays(14), out _)!;

        ProbeDrift drift = ProbeDrift.Between(older, newer);

        Assert.Equal((9, 0, Duration.FromDays(14)), (Math.Round(drift.OffsetMillivolts, 9), Math.Round(drift.Slope, 9), drift.Elapsed));
        Assert.Equal(-9 / (older.Slope * Nernst.MillivoltsPerPh(20)), drift.PhAtFour, 1e-9);
        Assert.True(drift.CastsDoubt);
        Assert.False(ProbeDrift.Between(older, older).CastsDoubt);
    }

    private static ProbeCalibration TwoPoint(double neutralMillivolts, double acidMillivolts) => ProbeCalibration.Of(
        [new(ReferenceBuffer.Technical7, neutralMillivolts, 25), new(ReferenceBuffer.Phthalate4, acidMillivolts, 25)], _at, out _)!;

    private static string? Wrong(params BufferReading[] points)
    {
        Assert.Null(ProbeCalibration.Of(points, _at, out string? wrong));
        return wrong;
    }
}
