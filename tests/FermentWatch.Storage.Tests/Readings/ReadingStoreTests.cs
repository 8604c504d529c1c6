using FermentWatch.Kitchen.Readings;
using FermentWatch.Storage.Readings;
using NodaTime;

namespace FermentWatch.Storage.Tests.Readings;

public sealed class ReadingStoreTests : OpenedStore
{
    [Fact]
    public async Task AppendAsync_NewReadings_AreReadBackAsTheyCame()
    {
        Reading[] readings = [Make.Timed(0, 18.25), Make.Timed(0.001, 18.5), Make.Timed(0, 4.5, quantity: Quantity.Ph), Make.Timed(0, 7, sensor: 2)];

        Assert.Equal(new AppendResult(4, 0, 0), await AppendAsync(readings));

        Assert.Equal(
            [new JudgedReading(readings[0], Verdict.Pending), new JudgedReading(readings[1], Verdict.Pending)],
            await ReadAsync());
    }

    [Fact]
    public async Task AppendAsync_SameKeySameValue_IsADuplicate()
    {
        await AppendAsync(Make.Timed(0, 18.25));
        Assert.Equal(new AppendResult(0, 2, 0), await AppendAsync(Make.Timed(0, 18.25), Make.Timed(0, 18.25)));
        Assert.Single(await ReadAsync());
    }

    [Fact]
    public async Task AppendAsync_SameKeyOtherValue_TheFirstStaysAndTheConflictIsCounted()
    {
        await AppendAsync(Make.Timed(0, 18.25));
        Assert.Equal(new AppendResult(0, 0, 1), await AppendAsync(Make.Timed(0, 19)));
        Assert.Equal(new AppendResult(0, 0, 1), await AppendAsync(Make.Timed(0, 20)));

        Assert.Equal(18.25, Assert.Single(await ReadAsync()).Reading.Value);
        Assert.Equal(
            [new ConflictCount(Quantity.Temperature, 2, Make.Noon, 18.25, 20, Make.Noon + Duration.FromHours(1))],
            await Store.Log.ConflictsAsync(1, default));
    }

    [Fact]
    public async Task AppendAsync_BareReadingsAtOneMillisecond_AreAllKeptInTheNextFreeOnes()
    {
        await AppendAsync(Make.Timed(0.002, 99));
        Assert.Equal(new AppendResult(4, 0, 0), await AppendAsync(Make.Bare(0, 1), Make.Bare(0, 2), Make.Bare(0, 2), Make.Bare(0.001, 3)));

        Assert.Equal(
            [(0, 1.0), (1, 2.0), (2, 99.0), (3, 2.0), (4, 3.0)],
            (await ReadAsync()).Select(entry => ((entry.Reading.MeasuredAt - Make.Noon).TotalMilliseconds, entry.Reading.Value)));
    }

    [Fact]
    public async Task AppendAsync_BurstOfBareReadings_TakesOneMillisecondEach()
    {
        var burst = Enumerable.Range(0, 20_000).Select(index => Make.Bare(index / 20 / 1000.0, index)).ToList();
        foreach (var chunk in burst.Chunk(500))
            await AppendAsync(chunk);

        var stored = await ReadAsync();
        Assert.Equal(Enumerable.Range(0, 20_000), stored.Select(entry => (int)entry.Reading.Value).Order());
        Assert.Equal(Duration.FromMilliseconds(19_999), stored[^1].Reading.MeasuredAt - stored[0].Reading.MeasuredAt);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public async Task AppendAsync_ValueThatIsNoNumber_IsRefusedWithTheWholeGroup(double value)
    {
        var refused = await Assert.ThrowsAsync<ArgumentException>(() => AppendAsync(Make.Timed(0, 1), Make.Timed(1, value)));
        Assert.Contains($"Sensor 1: Temperature is {value}", refused.Message, StringComparison.Ordinal);
        Assert.Empty(await ReadAsync());
    }

    [Fact]
    public async Task ReadAsync_Span_TakesItsStartAndLeavesItsEnd()
    {
        await AppendAsync(Make.Timed(0, 0), Make.Timed(1, 1), Make.Timed(2, 2), Make.Timed(3, 3));
        var read = await Store.Log.ReadAsync(1, Quantity.Temperature, Make.Noon + Duration.FromSeconds(1), Make.Noon + Duration.FromSeconds(3),
            default);
        Assert.Equal([1.0, 2.0], read.Select(entry => entry.Reading.Value));
        var finer = await Store.Log.ReadAsync(
            1, Quantity.Temperature, Make.Noon + Duration.FromTicks(1), Make.Noon + Duration.FromSeconds(3) + Duration.FromTicks(1), default);
        Assert.Equal([1.0, 2.0, 3.0], finer.Select(entry => entry.Reading.Value));
    }

    [Fact]
    public async Task LastAsync_SeveralQuantities_GivesTheLastMeasuredOfEach()
    {
        await AppendAsync(Make.Timed(5, 18), Make.Timed(3, 17), Make.Timed(1, 4.2, quantity: Quantity.Ph), Make.Timed(9, 30, sensor: 2));
        Assert.Equal([(Quantity.Temperature, 18.0), (Quantity.Ph, 4.2)], (await Store.Log.LastAsync(1, default))
            .Select(entry => (entry.Reading.Quantity, entry.Reading.Value)));
        Assert.Empty(await Store.Log.LastAsync(3, default));
    }

    [Fact]
    public async Task RejectAsync_SameTopicAndReason_CountsAndKeepsTheLast()
    {
        var first = new Reject("fermentwatch/sensor/shelf/temperature", RejectReason.NotParseable, "warm", Make.Noon, null,
            "'warm' is not a number; 18.5 would be one.");
        var second = first with { Example = "hot", ReceivedAt = Make.Noon + Duration.FromSeconds(1), SensorKey = 3 };
        var other = first with { Reason = RejectReason.NoValue, Example = "NaN", ReceivedAt = Make.Noon + Duration.FromSeconds(2) };
        foreach (var reject in new[] { first, second, other })
            await Store.RejectAsync(reject, default);

        Assert.Equal([new RejectCount(other, 1), new RejectCount(second, 2)], await Store.Log.RejectsAsync(default));
    }

    [Fact]
    public async Task RejectAsync_EndlessTopics_KeepsTheThousandHeardLast()
    {
        await Task.WhenAll(Enumerable.Range(0, 1100).Select(index => Store.RejectAsync(
            new Reject($"made/up/{index}", RejectReason.UnknownSensor, "1", Make.Noon + Duration.FromSeconds(index), null,
            "Nobody has told us of it."), default)));

        var kept = await Store.Log.RejectsAsync(default);
        Assert.Equal(1000, kept.Count);
        Assert.Equal("made/up/1099", kept[0].Last.Topic);
        Assert.Equal("made/up/100", kept[^1].Last.Topic);
    }

    [Fact]
    public async Task Open_AfterClosing_FindsEverythingAndGoesOnCounting()
    {
        await AppendAsync(Make.Timed(0, 18));
        await Store.Log.SettleAsync([Make.Timed(0, 18).Judged(Verdict.Counts)], 1, default);
        await RestartAsync();

        Assert.Equal(new AppendResult(1, 1, 0), await AppendAsync(Make.Timed(0, 18), Make.Timed(1, 19)));
        Assert.Equal([Verdict.Counts, Verdict.Pending], (await ReadAsync()).Select(entry => entry.Verdict));
        Assert.Equal(1, await Store.Log.MeansRevisionAsync(default));
        Assert.Equal(19, Assert.Single((await Store.Log.NotYetJudgedAsync(10, default)).Readings).Reading.Value);
    }

    private Task<AppendResult> AppendAsync(params Reading[] readings) => Store.AppendAsync(readings, default);

    private Task<IReadOnlyList<JudgedReading>> ReadAsync() =>
        Store.Log.ReadAsync(1, Quantity.Temperature, Make.Noon - Duration.FromDays(1), Make.Noon + Duration.FromDays(1), default);
}
