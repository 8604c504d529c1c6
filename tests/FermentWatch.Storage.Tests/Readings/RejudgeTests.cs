using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Storage.Tests.Records;
using NodaTime;

namespace FermentWatch.Storage.Tests.Readings;

/// <summary>Verdicts that change because what they are judged by has, over the real books and the real log.</summary>
public sealed class RejudgeTests : OpenedRecords
{
    [Fact]
    public async Task RunAsync_RuleAddedAndRemoved_ChangesVerdictsOfMonthsAgoAndBack()
    {
        Sensor sensor = await AddSensorAsync("shelf");
        var pass = new JudgingPass(Get<IReadingLog>(),
            new JudgingBooks(Get<ISensorBook>(), Get<ISourceRuleBook>(), Get<Kitchen.Probes.IProbeBook>(), Get<IRejudgeBook>()));
        Instant[] times = [Noon, Noon + Duration.FromHours(2), Noon + Duration.FromDays(90)];
        await Get<IReadingIntake>()
            .AppendAsync([.. times.Select(at => new Reading(sensor.Key, Quantity.Temperature, -4, at, at, TimeSource.Payload))], default);
        await pass.RunAsync(default);
        Assert.Equal((3, 0), await CountedAsync(sensor));
        var rule = new SourceRule
        {
            Id = Guid.CreateVersion7(), TopicFilter = "probe", SensorSlug = "shelf", Payload = SourcePayload.Number,
            Quantity = Quantity.Temperature, Unit = "Cel", PlausibleLow = 0,
        };

        await Get<ISourceRuleBook>().AddAsync(rule, default);
        Assert.Equal(3, await pass.RunAsync(default));
        Assert.Equal((0, 3), await CountedAsync(sensor));
        Assert.Empty(await Get<IReadingLog>()
            .MeansAsync(sensor.Key, Quantity.Temperature, MeanSpan.Hour, Noon, Noon + Duration.FromDays(100), default));
        Assert.Equal(0, await pass.RunAsync(default));

        await Get<ISourceRuleBook>().RemoveAsync(rule.Id, default);
        await pass.RunAsync(default);
        Assert.Equal((3, 0), await CountedAsync(sensor));
    }

    [Fact]
    public async Task FirstAndLastOther_AtTheEdges_HoldTheFirstAndNotTheLast()
    {
        Sensor sensor = await AddSensorAsync("shelf");
        await Get<IReadingIntake>().AppendAsync(
            [.. new[] { 20.0, 21, 21 }.Select((value, i) =>
                new Reading(sensor.Key, Quantity.Temperature, value, Noon + Duration.FromHours(i), Noon, TimeSource.Payload))], default);
        var log = Get<IReadingLog>();
        Task<Instant?> First(double from, double until) =>
            log.FirstAsync(sensor.Key, Quantity.Temperature, Noon + Duration.FromHours(from), Noon + Duration.FromHours(until), default);
        Task<Instant?> Other(double value, double from, double until) =>
            log.LastOtherAsync(sensor.Key, Quantity.Temperature, value, Noon + Duration.FromHours(from), Noon + Duration.FromHours(until), default);

        Assert.Equal(Noon, await log.FirstAsync(sensor.Key, Quantity.Temperature, Instant.MinValue, Instant.MaxValue, default));
        Assert.Equal(Noon + Duration.FromHours(1), await First(0.1, 2));
        Assert.Null(await First(0.1, 1));
        Assert.Equal(Noon, await Other(21, 0, 3));
        Assert.Null(await Other(21, 0.1, 3));
        Assert.Equal(Noon + Duration.FromHours(1), await Other(20, 0, 2));
    }

    private async Task<(long Count, long OutOfRange)> CountedAsync(Sensor sensor)
    {
        var counts = await Get<IReadingLog>().VerdictCountsAsync(sensor.Key, default);
        return (counts.GetValueOrDefault(Verdict.Counts), counts.GetValueOrDefault(Verdict.OutOfRange));
    }
}
