using FermentWatch.Kitchen.Readings;
using FermentWatch.Storage.Readings.Histories;
using NodaTime;

namespace FermentWatch.Storage.Tests.Readings;

public sealed class HistoryTests : OpenedStore
{
    private static readonly Instant Noon = Make.Noon;

    [Fact]
    public async Task AskAsync_FewReadings_AnswersThemOneByOne()
    {
        await JudgeAsync(Make.Timed(0, 18), Make.Timed(60, 19), Make.Timed(7200, 20));
        MeasuredHistory history = await AskAsync(0, 3, 3);

        Assert.Null(history.Width);
        Assert.Equal([Point(0, 18), Point(1, 19), Point(120, 20)], history.Points);
    }

    [Fact]
    public async Task AskAsync_MoreReadingsThanPoints_FoldsThemExactly()
    {
        await JudgeAsync([.. Enumerable.Range(0, 24 * 60).Select(minute => Make.Timed(minute * 60, minute / 60))]);
        MeasuredHistory history = await AskAsync(0, 24, 12);

        Assert.Equal(Duration.FromHours(2), history.Width);
        Assert.Equal(Enumerable.Range(0, 12).Select(i => new ReadingMean(Noon + Duration.FromHours(2 * i), (2 * i) + 0.5, 2 * i, (2 * i) + 1, 120)),
            history.Points);
    }

    [Fact]
    public async Task AskAsync_SpanThatEndsWithinAPoint_LeavesOutWhatLiesBeyondIt()
    {
        await JudgeAsync([.. Enumerable.Range(0, 24 * 60).Select(minute => Make.Timed(minute * 60, minute < 90 ? 100 : 10))]);
        MeasuredHistory history = await AskAsync(1.5, 23.25, 2);

        Assert.Equal(Duration.FromHours(12), history.Width);
        Assert.Equal([new ReadingMean(Noon, 10, 10, 10, 630), new ReadingMean(Noon + Duration.FromHours(12), 10, 10, 10, 675)], history.Points);
    }

    [Fact]
    public async Task AskAsync_TwoSensorsOfUnlikeRhythm_CountAlike()
    {
        await JudgeAsync([.. Enumerable.Range(0, 60).Select(minute => Make.Timed(minute * 60, 10)), Make.Timed(30, 20, sensor: 2)]);
        var question = new HistoryQuestion(Quantity.Temperature, [Span(1, 0, 1), Span(2, 0, 1)], 4) { From = Noon,
            Until = Noon + Duration.FromHours(1) };

        Assert.Equal(new ReadingMean(Noon, 15, 10, 20, 16), (await Store.Histories.AskAsync(question, default)).Points[0]);
    }

    /// <summary>Whatever the spans, points and lengths: what is folded from roll-ups is what the readings themselves give.</summary>
    [Fact]
    public async Task AskAsync_AnySpan_IsWhatTheReadingsGiveOneByOne()
    {
        var random = new Random(7);
        Reading[] readings = [.. Enumerable.Range(0, 9000).Select(_ => random.Next(30 * 86_400)).Distinct()
            .Select(second => Make.Timed(second, random.Next(100)))];
        await JudgeAsync(readings);
        for (int turn = 0; turn < 200; turn++)
        {
            long from = random.Next(30 * 86_400), until = random.NextInt64(from + 1, 31 * 86_400);
            var question = new HistoryQuestion(Quantity.Temperature, [Span(1, 0, 24 * 40)], random.Next(2, 300))
            {
                From = Noon + Duration.FromSeconds(from), Until = Noon + Duration.FromSeconds(until), MayBeSingle = false,
            };
            MeasuredHistory history = await Store.Histories.AskAsync(question, default);

            long width = (long)history.Width!.Value.TotalMilliseconds;
            var expected = readings.Where(reading => reading.MeasuredAt >= question.From && reading.MeasuredAt < question.Until)
                .GroupBy(reading => PointWidth.StartMs(width, reading.MeasuredAt.ToUnixTimeMilliseconds())).OrderBy(point => point.Key)
                .Select(point => (point.Key, Round(point.Average(each => each.Value)), point.Min(each => each.Value), point.Max(each => each.Value),
                point.Count()));
            Assert.Equal(expected, history.Points.Select(point =>
                (point.Start.ToUnixTimeMilliseconds(), Round(point.Value), point.Minimum, point.Maximum, point.Count)));
            Assert.True(history.Points.Count <= question.Points, $"{history.Points.Count} of {question.Points}");
        }

        static double Round(double value) => Math.Round(value, 9);
    }

    [Theory]
    [InlineData(1, 1500, 15)]
    [InlineData(30, 1500, 30)]
    [InlineData(365, 1500, 360)]
    [InlineData(1096, 1500, 1440)]
    [InlineData(1096, 300, 5760)]
    [InlineData(36_500, 2, 27_296_640)]
    public void Of_Span_IsTheShortestLengthThatFits(int days, int points, long minutes)
    {
        long from = Noon.ToUnixTimeMilliseconds(), until = from + (days * 86_400_000L);
        long width = PointWidth.Of(from, until, points);
        Assert.Equal(minutes, width / 60_000);
    }

    private Task<MeasuredHistory> AskAsync(double fromHour, double untilHour, int points) =>
        Store.Histories.AskAsync(new HistoryQuestion(Quantity.Temperature, [Span(1, fromHour, untilHour)], points)
        {
            From = Noon + Duration.FromHours(fromHour), Until = Noon + Duration.FromHours(untilHour),
        }, default);

    private async Task JudgeAsync(params Reading[] readings)
    {
        await Store.AppendAsync(readings, default);
        await Store.Log.SettleAsync([.. readings.Select(reading => reading.Judged(Verdict.Counts))], readings.Length, default);
    }

    private static SensorSpan Span(int sensor, double fromHour, double untilHour) =>
        new(sensor, Noon + Duration.FromHours(fromHour), Noon + Duration.FromHours(untilHour));

    private static ReadingMean Point(int minute, double value) => new(Noon + Duration.FromMinutes(minute), value, value, value, 1);
}
