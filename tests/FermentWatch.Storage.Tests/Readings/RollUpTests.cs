using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Storage.Tests.Readings;

/// <summary>Roll-ups of six hours and a day follow whatever becomes of the readings they are made of.</summary>
public sealed class RollUpTests : OpenedStore
{
    /// <summary>A day of one reading each twenty minutes from noon on: 10, 11, 12 and so on.</summary>
    private static readonly Reading[] Series = [.. Enumerable.Range(0, 72).Select(i => Make.Timed(i * 1200, 10 + i))];

    [Fact]
    public async Task SettleAsync_KnownSeries_MakesExactRollUps()
    {
        await JudgeAsync(Series, Verdict.Counts);

        Assert.Equal([Mean(0, 18.5, 10, 27, 18), Mean(6, 36.5, 28, 45, 18), Mean(12, 54.5, 46, 63, 18), Mean(18, 72.5, 64, 81, 18)],
            await MeansAsync(MeanSpan.SixHours));
        Assert.Equal([Mean(-12, 27.5, 10, 45, 36), Mean(12, 63.5, 46, 81, 36)], await MeansAsync(MeanSpan.Day));
    }

    [Fact]
    public async Task SettleAsync_LateReading_CorrectsTheRollUpsOfItsTime()
    {
        await JudgeAsync(Series, Verdict.Counts);
        await JudgeAsync([Make.Timed(60, 27.5 + 37)], Verdict.Counts);

        Assert.Equal(Mean(-12, 28.5, 10, 64.5, 37), (await MeansAsync(MeanSpan.Day))[0]);
        Assert.Equal(Mean(12, 63.5, 46, 81, 36), (await MeansAsync(MeanSpan.Day))[1]);
    }

    [Fact]
    public async Task SettleAsync_AnotherVerdict_CorrectsThemAndTakesThemAwayWhereNothingIsLeft()
    {
        await JudgeAsync(Series, Verdict.Counts);
        await SettleAsync(Series[..18], Verdict.Stuck);
        Assert.Equal([Mean(6, 36.5, 28, 45, 18)], (await MeansAsync(MeanSpan.SixHours)).Take(1));
        Assert.Equal(Mean(-12, 36.5, 28, 45, 18), (await MeansAsync(MeanSpan.Day))[0]);

        await SettleAsync(Series[18..36], Verdict.Stuck);
        Assert.Equal([Mean(12, 63.5, 46, 81, 36)], await MeansAsync(MeanSpan.Day));
    }

    [Fact]
    public async Task Open_LogOfTheVersionBefore_FillsThemFromWhatStandsInIt()
    {
        await JudgeAsync(Series, Verdict.Counts);
        var (six, day) = (await MeansAsync(MeanSpan.SixHours), await MeansAsync(MeanSpan.Day));
        await DisposeAsync();
        TemporaryFolder.Sql(DatabasePath, ReadingFileTests.BackToTheThirdVersion);

        await InitializeAsync();
        Assert.Equal(six, await MeansAsync(MeanSpan.SixHours));
        Assert.Equal(day, await MeansAsync(MeanSpan.Day));
        await JudgeAsync([Make.Timed(60, 27.5 + 37)], Verdict.Counts);
        Assert.Equal(Mean(-12, 28.5, 10, 64.5, 37), (await MeansAsync(MeanSpan.Day))[0]);
    }

    private async Task JudgeAsync(Reading[] readings, Verdict verdict)
    {
        await Store.AppendAsync(readings, default);
        await SettleAsync(readings, verdict);
    }

    private async Task SettleAsync(Reading[] readings, Verdict verdict) =>
        await Store.Log.SettleAsync([.. readings.Select(reading => reading.Judged(verdict))], await Store.Counted.EndAsync(default), default);

    private Task<IReadOnlyList<ReadingMean>> MeansAsync(MeanSpan span) =>
        Store.Log.MeansAsync(1, Quantity.Temperature, span, Make.Noon - Duration.FromDays(2), Make.Noon + Duration.FromDays(2), default);

    private static ReadingMean Mean(int hour, double value, double minimum, double maximum, int count) =>
        new(Make.Noon + Duration.FromHours(hour), value, minimum, maximum, count);
}
