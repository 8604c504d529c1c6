using FermentWatch.Kitchen.Probes;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Probes;

public sealed class ProbeWeighingTests
{
    private static readonly Instant _at = Instant.FromUtc(2026, 10, 4, 8, 0);

    [Theory]
    [InlineData(0, 20, false, ProbeWeight.Counts)]
    [InlineData(24, 20, false, ProbeWeight.Counts)]
    [InlineData(25, 20, false, ProbeWeight.OldCalibration)]
    [InlineData(1, 20, true, ProbeWeight.LeftStanding)]
    [InlineData(1, 55, false, ProbeWeight.SampleTemperature)]
    [InlineData(1, double.NaN, false, ProbeWeight.SampleTemperature)]
    [InlineData(-1, 20, false, ProbeWeight.NotCalibrated)]
    public void Weigh_GoodCalibration_DependsOnItsAgeAndOnTheProbesPlace(
        int hoursAfter, double sampleCelsius, bool leftStanding, ProbeWeight expected) =>
        Assert.Equal(expected, ProbeWeighing.Weigh(Calibration(160), _at + Duration.FromHours(hoursAfter), sampleCelsius, leftStanding));

    [Fact]
    public void Weigh_BadOrNoCalibration_DoesNotCount()
    {
        Assert.Equal(ProbeWeight.BadCalibration, ProbeWeighing.Weigh(Calibration(120), _at, 20, false));
        Assert.Equal(ProbeWeight.NotCalibrated, ProbeWeighing.Weigh(null, _at, 20, false));
    }

    private static ProbeCalibration Calibration(double acidMillivolts) => ProbeCalibration.Of(
        [new(ReferenceBuffer.Technical7, -15, 25), new(ReferenceBuffer.Phthalate4, acidMillivolts, 25)], _at, out _)!;
}
