using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Occasions;
using FermentWatch.Kitchen.Probes;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Kitchen.Tests.Doubles;
using NodaTime;
using NSubstitute;

namespace FermentWatch.Kitchen.Tests.Occasions;

/// <summary>What is told of sensors besides the page.</summary>
public class ConcernReaderTests
{
    private static readonly Instant Now = Make.Day(3);
    private static readonly Guid Counter = Guid.NewGuid();

    [Fact]
    public async Task Read_OneFallenSilent_IsOneConcernWithWhatToDo()
    {
        SensorConcern concern = Assert.Single(await ReadAsync((Sensor(1, "counter"), Temperature(20, Duration.FromHours(5)))));
        Assert.Equal((OccasionKind.SensorSilent, "counter", "Silent"), (concern.Kind, concern.Name, concern.Cause));
        Assert.Equal("Silent: last heard 5 hours ago, and it may be silent for 2 hours. Look at its power and its network.", concern.Words);
    }

    [Fact]
    public async Task Read_TwoThatDisagree_IsOneConcernNotTwo()
    {
        SensorConcern concern = Assert.Single(await ReadAsync(
            (Sensor(1, "counter"), Temperature(20, Duration.Zero)), (Sensor(2, "window"), Temperature(24, Duration.Zero))));
        Assert.Equal(OccasionKind.SensorWrong, concern.Kind);
        Assert.StartsWith("Disagrees ", concern.Cause, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Read_ProbeNeverInBuffer_IsACalibrationThatIsDue() =>
        Assert.Equal(OccasionKind.CalibrationDue, Assert.Single(await ReadAsync((Sensor(1, "probe"), Last(Quantity.Ph, 4.2, Duration.Zero)))).Kind);

    [Fact]
    public async Task Read_NothingHeardYetOrOutOfService_IsNoConcern()
    {
        Sensor removed = Sensor(2, "gone");
        removed.RemovedAt = Now;
        Assert.Empty(await ReadAsync((Sensor(1, "new"), null), (removed, Temperature(20, Duration.FromHours(50)))));
    }

    private static async Task<IReadOnlyList<SensorConcern>> ReadAsync(params (Sensor Sensor, JudgedReading? Last)[] known)
    {
        var sensors = Substitute.For<ISensorBook>();
        sensors.AllAsync(default).ReturnsForAnyArgs([.. known.Select(each => each.Sensor)]);
        var log = Substitute.For<IReadingLog>();
        log.ReadAsync(default, default, default, default, default).ReturnsForAnyArgs([]);
        log.MeansAsync(default, default, default, default, default, default).ReturnsForAnyArgs([]);
        foreach ((Sensor sensor, JudgedReading? last) in known)
        {
            log.LastAsync(sensor.Key, Arg.Any<CancellationToken>()).Returns(last is null ? [] : [last]);
            log.LastHeardAsync(sensor.Key, Arg.Any<CancellationToken>()).Returns(last?.Reading.ReceivedAt);
            if (last is { Reading: { Quantity: Quantity.Temperature, Value: double celsius } })
                log.MeansAsync(sensor.Key, Quantity.Temperature, MeanSpan.QuarterHour, Arg.Any<Instant>(), Arg.Any<Instant>(),
                    Arg.Any<CancellationToken>())
                    .Returns([.. Enumerable.Range(0, 12)
                        .Select(i => new ReadingMean(Now - Duration.FromMinutes(15 * (12 - i)), celsius, celsius, celsius, 3))]);
        }
        var rules = Substitute.For<ISourceRuleBook>();
        rules.AllAsync(default).ReturnsForAnyArgs([]);
        rules.FeedsAsync(default).ReturnsForAnyArgs([]);
        var probes = Substitute.For<IProbeBook>();
        probes.StandingAsync(default).ReturnsForAnyArgs([]);
        return await new ConcernReader(sensors, rules, probes, log).ReadAsync(TemperatureUnit.Celsius, Now, CancellationToken.None);
    }

    private static Sensor Sensor(int key, string name)
    {
        var sensor = new Sensor { Id = Guid.NewGuid(), Key = key, Slug = name, Name = name, AddedAt = Make.Packed };
        sensor.Placements.Add(new SensorPlacement { Id = Guid.NewGuid(), SensorId = sensor.Id, PlaceId = Counter, From = Make.Packed });
        return sensor;
    }

    private static JudgedReading Temperature(double celsius, Duration ago) => Last(Quantity.Temperature, celsius, ago);

    private static JudgedReading Last(Quantity quantity, double value, Duration ago) =>
        new(new Reading(1, quantity, value, Now - ago, Now - ago, TimeSource.Arrival), Verdict.Counts);
}
