using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Probes;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Judging;

/// <summary>What no single reading shows: rhythm, unit, neighbours, probe.</summary>
public class SensorAsAWholeTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 10, 1, 8, 0);

    [Theory]
    [InlineData(10, 600)]
    [InlineData(300, 900)]
    [InlineData(1800, 5400)]
    [InlineData(86_400, 172_800)]
    public void SilentAfter_SteadySensor_IsThreePausesWithinBounds(int pauseSeconds, int silentAfterSeconds) =>
        Assert.Equal(Duration.FromSeconds(silentAfterSeconds), ReportingRhythm.SilentAfter(Every(pauseSeconds, 20)));

    [Fact]
    public void SilentAfter_OnePauseAmongMany_DoesNotStretchIt() =>
        Assert.Equal(Duration.FromMinutes(15), ReportingRhythm.SilentAfter(Every(300, 20).Append(Start + Duration.FromDays(1))));

    [Fact]
    public void SilentAfter_PackOfManyAtOnce_IsOneArrival() =>
        Assert.Equal(Duration.FromHours(6),
        ReportingRhythm.SilentAfter(Every(7200, 10).SelectMany(at => Enumerable.Range(0, 50).Select(i => at + Duration.FromMilliseconds(i)))));

    [Fact]
    public void SilentAfter_HardlyHeard_IsTwoHours() => Assert.Equal(Duration.FromHours(2), ReportingRhythm.SilentAfter(Every(10, 5)));

    [Theory]
    [InlineData(19, 66, TemperatureUnit.Fahrenheit)]
    [InlineData(19, 72, TemperatureUnit.Fahrenheit)]
    [InlineData(4, 40, TemperatureUnit.Fahrenheit)]
    [InlineData(66, 19, TemperatureUnit.Celsius)]
    [InlineData(19, 24, null)]
    [InlineData(19, 31, null)]
    [InlineData(19, 4, null)]
    public void UnitShiftOf_FiguresBeforeAndNow_TellsAnotherUnitFromAnotherRoom(double before, double now, TemperatureUnit? expected) =>
        Assert.Equal(expected, UnitShift.Of(before, now));

    [Theory]
    [InlineData(2.0, 8, null)]
    [InlineData(2.1, 8, 2.1)]
    [InlineData(-2.1, 8, -2.1)]
    [InlineData(5, 3, null)]
    public void DisagreementBetween_TwoInOnePlace_IsToldBeyondTwoDegreesAndAnHour(double apart, int quarters, double? expected)
    {
        double? told = Disagreement.Between(Means(20 + apart, quarters), Means(20, 12));
        Assert.Equal(expected, told is { } value ? Math.Round(value, 9) : null);
    }

    [Fact]
    public void ProbeStandingOf_MillivoltsInAJar_IsReadByTheCalibrationAtItsTemperatureAndInformsOnly()
    {
        Sensor sensor = Probe(inJar: true);
        ProbeCheck check = Check(sensor, offset: 12, slope: 0.96);
        double millivolts = 12 - (0.96 * Nernst.MillivoltsPerPh(15) * (3.8 - 7));
        ProbeStanding standing = ProbeStanding.Of(sensor, [Last(Quantity.Millivolts, millivolts), Last(Quantity.Temperature, 15)], [check],
            Start + Duration.FromHours(2))!;
        Assert.Equal((3.8, 15.0, false, ProbeWeight.LeftStanding),
            (Math.Round(standing.Ph!.Value, 6), standing.SampleCelsius, standing.SampleIsAssumed, standing.Weight));
    }

    [Fact]
    public void ProbeStandingOf_ProbeThatSaysPh_IsCorrectedByItsOwnCheck()
    {
        Sensor sensor = Probe(inJar: false);
        BufferReading Shown(ReferenceBuffer buffer) => BufferReading.OfShownPh(buffer, BufferTable.PhAt(buffer, 20) + 0.2, 20);
        var check = new ProbeCheck
        {
            Id = Guid.NewGuid(), SensorId = sensor.Id, At = Start, EnteredAt = Start, By = "Mira",
                Points = [Shown(ReferenceBuffer.Technical7), Shown(ReferenceBuffer.Phthalate4)],
        };
        ProbeStanding standing = ProbeStanding.Of(sensor, [Last(Quantity.Ph, 4.1)], [check], Start + Duration.FromHours(2))!;
        Assert.Equal((3.9, true, ProbeWeight.Counts), (Math.Round(standing.Ph!.Value, 6), standing.SampleIsAssumed, standing.Weight));
    }

    [Fact]
    public void ProbeStandingOf_Thermometer_IsNone() =>
        Assert.Null(ProbeStanding.Of(Probe(inJar: false), [Last(Quantity.Temperature, 20)], [], Start));

    private static IEnumerable<Instant> Every(int seconds, int times) =>
        Enumerable.Range(0, times).Select(i => Start + Duration.FromSeconds((long)i * seconds));

    private static ReadingMean[] Means(double value, int quarters) =>
        [.. Enumerable.Range(0, quarters).Select(i => new ReadingMean(Start + Duration.FromMinutes(15 * i), value, value, value, 1))];

    private static JudgedReading Last(Quantity quantity, double value) =>
        new(new Reading(1, quantity, value, Start + Duration.FromHours(1), Start + Duration.FromHours(1), TimeSource.Arrival), Verdict.Counts);

    private static Sensor Probe(bool inJar)
    {
        var sensor = new Sensor { Id = Guid.NewGuid(), Key = 1, Slug = "probe", Name = "probe", AddedAt = Start };
        sensor.Placements.Add(new SensorPlacement { Id = Guid.NewGuid(), SensorId = sensor.Id, JarId = inJar ? Guid.NewGuid() : null, From = Start });
        return sensor;
    }

    private static ProbeCheck Check(Sensor sensor, double offset, double slope)
    {
        BufferReading Point(ReferenceBuffer buffer) =>
            new(buffer, offset - (slope * Nernst.MillivoltsPerPh(22) * (BufferTable.PhAt(buffer, 22) - 7)), 22);
        return new ProbeCheck
        {
            Id = Guid.NewGuid(), SensorId = sensor.Id, At = Start, EnteredAt = Start, By = "Mira",
                Points = [Point(ReferenceBuffer.Technical7), Point(ReferenceBuffer.Phthalate4)],
        };
    }
}
