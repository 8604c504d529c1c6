using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Judging;

public class ReadingJudgeTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 10, 1, 8, 0);

    [Fact]
    public void Judge_SteadyRoom_EveryReadingCounts() =>
        Assert.All(Verdicts(20.1, 20.2, 20.1, 20.3), verdict => Assert.Equal(Verdict.Counts, verdict));

    [Fact]
    public void Judge_UnpluggedProbe_IsASentinelWhateverItsNeighbours() =>
        Assert.Equal([Verdict.Counts, Verdict.Sentinel, Verdict.Counts], Verdicts(20, -127, 20));

    [Fact]
    public void Judge_PowerUpValue_IsASentinelAmongRoomTemperatures() =>
        Assert.Equal(Verdict.Sentinel, Verdicts(85, 20.5, 20.6)[0]);

    [Fact]
    public void Judge_RealEightyFive_IsOutOfRangeNotASentinel() =>
        Assert.Equal([Verdict.OutOfRange, Verdict.OutOfRange, Verdict.OutOfRange], Verdicts(84.5, 85, 85.5));

    [Theory]
    [InlineData(-20, Verdict.Counts)]
    [InlineData(-20.1, Verdict.OutOfRange)]
    [InlineData(50, Verdict.Counts)]
    [InlineData(50.1, Verdict.OutOfRange)]
    public void Judge_EdgeOfTheRange_CountsUpToTheEdge(double celsius, Verdict expected) =>
        Assert.Equal(expected, Verdicts(celsius)[0]);

    [Fact]
    public void Judge_LonelySpike_IsAJump() =>
        Assert.Equal([Verdict.Counts, Verdict.Counts, Verdict.Jump, Verdict.Counts, Verdict.Counts], Verdicts(20, 20, 31, 20, 20));

    [Fact]
    public void Judge_HeatWave_IsAJumpOnlyUntilItsNeighboursAgree()
    {
        Assert.Equal(Verdict.Jump, Verdicts(20, 20, 20, 31)[3]);
        Assert.Equal(Verdict.Counts, Verdicts(20, 20, 20, 31, 31, 31, 31)[3]);
    }

    [Fact]
    public void Judge_ClockAhead_IsNotBelieved()
    {
        var reading = new Reading(1, Quantity.Temperature, 20, Start + Duration.FromMinutes(6), Start, TimeSource.Payload);
        Assert.Equal([Verdict.ClockNotBelieved], ReadingJudge.Judge([reading], 0, 1, MeasuredQuantity.Of(Quantity.Temperature).Range));
    }

    [Fact]
    public void Judge_ClockNeverSet_IsTooOld()
    {
        var reading = new Reading(1, Quantity.Temperature, 20, Instant.FromUnixTimeSeconds(12), Start, TimeSource.Payload);
        Assert.Equal([Verdict.TooOld], ReadingJudge.Judge([reading], 0, 1, MeasuredQuantity.Of(Quantity.Temperature).Range));
    }

    private static List<Verdict> Verdicts(params double[] values)
    {
        var readings = values.Select((value, i) =>
        {
            Instant at = Start + Duration.FromMinutes(5 * i);
            return new Reading(1, Quantity.Temperature, value, at, at, TimeSource.Arrival);
        }).ToList();
        return [.. ReadingJudge.Judge(readings, 0, readings.Count, MeasuredQuantity.Of(Quantity.Temperature).Range)];
    }
}
