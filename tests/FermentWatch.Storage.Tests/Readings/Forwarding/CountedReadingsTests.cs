using FermentWatch.Kitchen.Forwarding;
using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Storage.Tests.Readings.Forwarding;

public sealed class CountedReadingsTests : OpenedStore
{
    [Fact]
    public async Task AfterAsync_LateReading_ComesLastWhateverItsTime()
    {
        await WriteAsync(Verdict.Counts, Make.Timed(10, 10), Make.Timed(20, 20));
        var first = await Store.Counted.AfterAsync(0, 10, default);
        await WriteAsync(Verdict.Counts, Make.Timed(-86_400, 1));

        var late = await Store.Counted.AfterAsync(first.Cursor, 10, default);

        Assert.Equal([10.0, 20.0], Values(first));
        Assert.Equal([1.0], Values(late));
        Assert.Empty((await Store.Counted.AfterAsync(late.Cursor, 10, default)).Entries);
    }

    [Fact]
    public async Task AfterAsync_WhatDoesNotCount_WaitsForAnotherVerdict()
    {
        await WriteAsync(Verdict.Counts, Make.Timed(0, 18));
        await WriteAsync(Verdict.Jump, Make.Timed(1, 40));
        await WriteAsync(Verdict.Sentinel, Make.Timed(2, 85));
        await Store.AppendAsync([Make.Timed(3, 19)], default);
        var before = await Store.Counted.AfterAsync(0, 10, default);

        await Store.Log.SettleAsync([Make.Timed(1, 40).Judged(Verdict.Counts), Make.Timed(3, 19).Judged(Verdict.Counts)], before.Cursor, default);

        Assert.Equal([18.0], Values(before));
        Assert.Equal([40.0, 19.0], Values(await Store.Counted.AfterAsync(before.Cursor, 10, default)));
    }

    [Fact]
    public async Task AfterAsync_InSlices_GivesEachReadingOnce()
    {
        await WriteAsync(Verdict.Counts, [.. Enumerable.Range(0, 25).Select(second => Make.Timed(second, second))]);
        var values = new List<double>();
        for (long cursor = 0; ;)
        {
            var slice = await Store.Counted.AfterAsync(cursor, 10, default);
            if (slice.Entries.Count == 0)
                break;
            values.AddRange(Values(slice));
            cursor = slice.Cursor;
        }
        Assert.Equal(Enumerable.Range(0, 25).Select(second => (double)second), values);
    }

    [Fact]
    public async Task AfterAsync_NothingThatCounts_StillMovesOn()
    {
        await WriteAsync(Verdict.OutOfRange, Make.Timed(0, 200), Make.Timed(1, 200));
        var slice = await Store.Counted.AfterAsync(0, 10, default);
        Assert.Empty(slice.Entries);
        Assert.Equal(await Store.Counted.EndAsync(default), slice.Cursor);
    }

    [Fact]
    public async Task NewestAsync_IsTheOneWrittenLastThatCounts()
    {
        Assert.Null(await Store.Counted.NewestAsync(default));
        Assert.Equal(0, await Store.Counted.EndAsync(default));
        await WriteAsync(Verdict.Counts, Make.Timed(100, 100));
        await WriteAsync(Verdict.Counts, Make.Timed(5, 5));
        await WriteAsync(Verdict.Stuck, Make.Timed(200, 200));
        Assert.Equal(5, (await Store.Counted.NewestAsync(default))!.Value);
        Assert.Equal(6, await Store.Counted.EndAsync(default));
    }

    private async Task WriteAsync(Verdict verdict, params Reading[] readings)
    {
        await Store.AppendAsync(readings, default);
        var slice = await Store.Log.NotYetJudgedAsync(readings.Length, default);
        await Store.Log.SettleAsync([.. readings.Select(reading => reading.Judged(verdict))], slice.Cursor, default);
    }

    private static IEnumerable<double> Values(ForwardSlice<Reading> slice) => slice.Entries.Select(reading => reading.Value);
}
