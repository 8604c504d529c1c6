using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Storage.Tests.Readings;

public sealed class SettleTests : OpenedStore
{
    [Fact]
    public async Task NotYetJudgedAsync_InSteps_FollowsTheOrderOfWriting()
    {
        await Store.AppendAsync([Make.Timed(2, 2), Make.Timed(1, 1)], default);
        await Store.AppendAsync([Make.Timed(0, 0)], default);

        var first = await Store.Log.NotYetJudgedAsync(2, default);
        Assert.Equal([2.0, 1.0], first.Readings.Select(entry => entry.Reading.Value));
        await SettleAsync(first, Verdict.Counts);

        var second = await Store.Log.NotYetJudgedAsync(2, default);
        Assert.Equal([0.0], second.Readings.Select(entry => entry.Reading.Value));
        await SettleAsync(second, Verdict.Jump);
        Assert.Empty((await Store.Log.NotYetJudgedAsync(2, default)).Readings);
    }

    [Fact]
    public async Task SettleAsync_Verdicts_MoveTheReadingsToTheEndOfTheOrderOfWriting()
    {
        await Store.AppendAsync([Make.Timed(0, 0), Make.Timed(1, 1)], default);
        await Store.Log.SettleAsync([Make.Timed(0, 0).Judged(Verdict.Counts)], 1, default);

        Assert.Equal("2:1,3:0",
            TemporaryFolder.Sql(DatabasePath, "SELECT group_concat(seq || ':' || CAST(value AS INTEGER) ORDER BY seq) FROM reading"));
    }

    [Fact]
    public async Task SettleAsync_ReadingThatCounts_EntersTheMeansOfItsBuckets()
    {
        Reading[] readings = [Make.Timed(0, 18), Make.Timed(59.999, 19), Make.Timed(60, 20), Make.Timed(899, 85), Make.Timed(900, 22)];
        await Store.AppendAsync(readings, default);
        await Store.Log.SettleAsync(
            [.. readings.Select(reading => reading.Judged(reading.Value == 85 ? Verdict.Sentinel : Verdict.Counts))], 5, default);

        Assert.Equal([Mean(0, 19, 18, 20, 3), Mean(15, 22, 22, 22, 1)], await MeansAsync(MeanSpan.QuarterHour));
        Assert.Equal([Mean(0, 19.75, 18, 22, 4)], await MeansAsync(MeanSpan.Hour));
    }

    [Fact]
    public async Task SettleAsync_VerdictTakenBack_TakesTheReadingOutOfTheMeans()
    {
        await Store.AppendAsync([Make.Timed(0, 18), Make.Timed(1, 30)], default);
        await Store.Log.SettleAsync([Make.Timed(0, 18).Judged(Verdict.Counts), Make.Timed(1, 30).Judged(Verdict.Counts)], 2, default);
        await Store.Log.SettleAsync([Make.Timed(1, 30).Judged(Verdict.Jump)], 2, default);
        Assert.Equal([Mean(0, 18, 18, 18, 1)], await MeansAsync(MeanSpan.QuarterHour));
        await Store.Log.SettleAsync([Make.Timed(0, 18).Judged(Verdict.Jump)], 2, default);

        foreach (var span in Enum.GetValues<MeanSpan>())
            Assert.Empty(await MeansAsync(span));
        Assert.Equal(3, await Store.Log.MeansRevisionAsync(default));
    }

    [Fact]
    public async Task MeansRevisionAsync_NothingChangesInAQuarterHour_StaysAsItIs()
    {
        await Store.AppendAsync([Make.Timed(0, 18), Make.Timed(1, 85)], default);
        Assert.Equal(0, await Store.Log.MeansRevisionAsync(default));
        await Store.Log.SettleAsync([Make.Timed(1, 85).Judged(Verdict.Sentinel)], 2, default);
        Assert.Equal(0, await Store.Log.MeansRevisionAsync(default));
        await Store.Log.SettleAsync([Make.Timed(0, 18).Judged(Verdict.Counts)], 2, default);
        Assert.Equal(1, await Store.Log.MeansRevisionAsync(default));
        await Store.Log.SettleAsync([Make.Timed(0, 18).Judged(Verdict.Counts)], 2, default);
        Assert.Equal(1, await Store.Log.MeansRevisionAsync(default));
    }

    [Fact]
    public async Task VerdictCountsAsync_AfterRevisions_AgreesWithTheReadings()
    {
        await Store.AppendAsync([Make.Timed(0, 18), Make.Timed(1, 85), Make.Timed(2, 19), Make.Timed(3, 20), Make.Timed(0, 1, sensor: 2)], default);
        await Store.Log.SettleAsync(
            [Make.Timed(0, 18).Judged(Verdict.Counts), Make.Timed(1, 85).Judged(Verdict.Counts), Make.Timed(2, 19).Judged(Verdict.Jump)], 5, default);
        await Store.Log.SettleAsync([Make.Timed(1, 85).Judged(Verdict.Sentinel)], 5, default);

        Assert.Equal(
            new Dictionary<Verdict, long> { [Verdict.Pending] = 1, [Verdict.Counts] = 1, [Verdict.Jump] = 1, [Verdict.Sentinel] = 1 },
            await Store.Log.VerdictCountsAsync(1, default));
    }

    [Fact]
    public async Task SettleAsync_NeighbourWrittenSince_WaitsForItsOwnTurn()
    {
        await Store.AppendAsync([Make.Timed(0, 18)], default);
        var slice = await Store.Log.NotYetJudgedAsync(10, default);
        await Store.AppendAsync([Make.Timed(1, 19)], default);
        await Store.Log.SettleAsync([Make.Timed(0, 18).Judged(Verdict.Counts), Make.Timed(1, 19).Judged(Verdict.Counts)], slice.Cursor, default);

        Assert.Equal([new JudgedReading(Make.Timed(1, 19), Verdict.Pending)], (await Store.Log.NotYetJudgedAsync(10, default)).Readings);
    }

    [Fact]
    public async Task SettleAsync_UnknownReadingOrCursorBeyondTheEnd_ChangesNothing()
    {
        await Store.AppendAsync([Make.Timed(0, 18)], default);
        var unknown = await Assert.ThrowsAsync<ArgumentException>(() =>
            Store.Log.SettleAsync([Make.Timed(0, 18).Judged(Verdict.Counts), Make.Timed(7, 18).Judged(Verdict.Counts)], 1, default));
        Assert.Contains("no reading to judge: sensor 1, Temperature, 2025-10-04T12:00:07Z", unknown.Message, StringComparison.Ordinal);
        await Assert.ThrowsAsync<ArgumentOutOfRangeException>(() => Store.Log.SettleAsync([], 2, default));

        Assert.Single((await Store.Log.NotYetJudgedAsync(10, default)).Readings);
        Assert.Empty(await MeansAsync(MeanSpan.QuarterHour));
    }

    private Task SettleAsync(LogSlice slice, Verdict verdict) =>
        Store.Log.SettleAsync([.. slice.Readings.Select(entry => entry.Reading.Judged(verdict))], slice.Cursor, default);

    private Task<IReadOnlyList<ReadingMean>> MeansAsync(MeanSpan span) =>
        Store.Log.MeansAsync(1, Quantity.Temperature, span, Make.Noon - Duration.FromDays(1), Make.Noon + Duration.FromDays(1), default);

    private static ReadingMean Mean(int minute, double value, double minimum, double maximum, int count) =>
        new(Make.Noon + Duration.FromMinutes(minute), value, minimum, maximum, count);
}
