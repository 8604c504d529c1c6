using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Probes;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Judging;

public class JudgingBasisTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 10, 1, 8, 0);
    private static readonly Sensor Shelf = new() { Id = Guid.NewGuid(), Key = 1, Slug = "shelf", Name = "shelf", AddedAt = Start };
    private static readonly Sensor Other = new() { Id = Guid.NewGuid(), Key = 2, Slug = "other", Name = "other", AddedAt = Start };

    [Fact]
    public void RangeOf_RuleThatNamesTheSensor_NarrowsThatQuantityOnly()
    {
        JudgingBasis basis = Basis([Rule("shelf", low: 5)], []);
        Assert.Equal(new PlausibleRange { Low = 5, High = 50, LargestStep = 6, LeastJump = 2 }, basis.RangeOf(1, Quantity.Temperature));
        Assert.Equal(MeasuredQuantity.Of(Quantity.Humidity).Range, basis.RangeOf(1, Quantity.Humidity));
        Assert.Equal(MeasuredQuantity.Of(Quantity.Temperature).Range, basis.RangeOf(2, Quantity.Temperature));
        Assert.Equal(MeasuredQuantity.Of(Quantity.Temperature).Range, basis.RangeOf(99, Quantity.Temperature));
    }

    [Fact]
    public void RangeOf_RuleForAnyDevice_HoldsForThoseItHasFed()
    {
        SourceRule rule = Rule(null, low: 5, high: 30);
        JudgingBasis basis = Basis([rule], [new SourceFeed(rule.Id, Other.Id)]);
        Assert.Equal((5.0, 30.0), (basis.RangeOf(2, Quantity.Temperature).Low, basis.RangeOf(2, Quantity.Temperature).High));
        Assert.Equal(-20, basis.RangeOf(1, Quantity.Temperature).Low);
    }

    [Fact]
    public void RangeOf_TwoRules_TheWiderHolds() => Assert.Equal(
        new PlausibleRange { Low = 3, High = 40, LargestStep = 6, LeastJump = 2 }, Basis([Rule("shelf", 5, 30), Rule("shelf", 3, 40)], [])
            .RangeOf(1, Quantity.Temperature));

    [Fact]
    public void IsBadlyCalibrated_BetweenABadCheckAndAGoodOne_IsTrueForProbesOnly()
    {
        var basis = new JudgingBasis([Shelf, Other], new SourceLimits([], []), [Check(2, slope: 1), Check(0, slope: 0.7)]);
        Assert.False(basis.IsBadlyCalibrated(1, Quantity.Ph, Start - Duration.FromHours(1)));
        Assert.True(basis.IsBadlyCalibrated(1, Quantity.Ph, Start));
        Assert.True(basis.IsBadlyCalibrated(1, Quantity.Millivolts, Start + Duration.FromHours(1)));
        Assert.False(basis.IsBadlyCalibrated(1, Quantity.Temperature, Start + Duration.FromHours(1)));
        Assert.False(basis.IsBadlyCalibrated(2, Quantity.Ph, Start + Duration.FromHours(1)));
        Assert.False(basis.IsBadlyCalibrated(1, Quantity.Ph, Start + Duration.FromHours(2)));
    }

    [Fact]
    public void OfShownPh_ProbeThatShowsBuffersRight_IsAnIdealOne()
    {
        BufferReading[] points = [Shown(ReferenceBuffer.Technical7, 0), Shown(ReferenceBuffer.Phthalate4, 0)];
        ProbeCalibration calibration = ProbeCalibration.Of(points, Start, out _)!;
        Assert.Equal((0, 1), (Math.Round(calibration.OffsetMillivolts, 9), Math.Round(calibration.Slope, 9)));
        Assert.Equal(CalibrationFaults.Offset,
            ProbeCalibration.Of([Shown(ReferenceBuffer.Technical7, 0.6), Shown(ReferenceBuffer.Phthalate4, 0.6)], Start, out _)!.Faults);
    }

    private static BufferReading Shown(ReferenceBuffer buffer, double off) => BufferReading.OfShownPh(buffer, BufferTable.PhAt(buffer, 18) + off, 18);

    private static ProbeCheck Check(double hours, double slope)
    {
        Instant at = Start + Duration.FromHours(hours);
        BufferReading Point(ReferenceBuffer buffer) =>
            new(buffer, -slope * Nernst.MillivoltsPerPh(20) * (BufferTable.PhAt(buffer, 20) - 7), 20);
        return new ProbeCheck
        {
            Id = Guid.NewGuid(), SensorId = Shelf.Id, At = at, EnteredAt = at, By = "Mira",
                Points = [Point(ReferenceBuffer.Technical7), Point(ReferenceBuffer.Phthalate4)],
        };
    }

    private static JudgingBasis Basis(SourceRule[] rules, SourceFeed[] feeds) => new([Shelf, Other], new SourceLimits(rules, feeds), []);

    private static SourceRule Rule(string? slug, double? low = null, double? high = null) => new()
    {
        Id = Guid.NewGuid(), TopicFilter = slug is null ? "hub/{device}" : "probe", SensorSlug = slug, Payload = SourcePayload.Number,
        Quantity = Quantity.Temperature, Unit = "Cel", PlausibleLow = low, PlausibleHigh = high,
    };
}
