using CsCheck;
using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Tests.Doubles;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Judging;

public class StuckSensorTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 10, 1, 8, 0);

    [Fact]
    public async Task RunAsync_SameValueForMoreThanADay_IsStuckFromThenOn()
    {
        LogInMemory log = await JudgedAsync(Hours(0, 30).Select(hour => (hour, 19.25)));
        Assert.Equal(Verdict.Counts, log.VerdictAt(At(24)));
        Assert.Equal(Verdict.Stuck, log.VerdictAt(At(25)));
        Assert.Equal(Verdict.Stuck, log.VerdictAt(At(30)));
    }

    [Fact]
    public async Task RunAsync_LateReadingOfAnotherValue_TakesItBack()
    {
        LogInMemory log = await JudgedAsync(Hours(0, 30).Select(hour => (hour, 19.25)));
        log.Write([Reading(12.5, 19.5)]);
        await new JudgingPass(log).RunAsync(CancellationToken.None);
        Assert.All(log.All, entry => Assert.Equal(Verdict.Counts, entry.Verdict));
    }

    [Fact]
    public async Task RunAsync_SilentForHalfTheDay_IsNotStuck()
    {
        LogInMemory log = await JudgedAsync(Hours(0, 6).Concat(Hours(18, 26)).Select(hour => (hour, 19.25)));
        Assert.All(log.All, entry => Assert.Equal(Verdict.Counts, entry.Verdict));
    }

    [Fact]
    public async Task RunAsync_HumidityAtItsEnd_IsNotStuck()
    {
        var log = new LogInMemory();
        log.Write(Hours(0, 30).Select(hour => Reading(hour, 100) with { Quantity = Quantity.Humidity }));
        await new JudgingPass(log).RunAsync(CancellationToken.None);
        Assert.All(log.All, entry => Assert.Equal(Verdict.Counts, entry.Verdict));
    }

    [Fact]
    public async Task RunAsync_DaysInAnyOrderAndBatch_EndInTheSameVerdicts()
    {
        double[] values = [19, 19, 19, 19, 19, 19, 19, 19.5];
        var days = Gen.Int[0, values.Length - 1].Select(index => values[index]).List[30, 60];
        int stuck = 0;
        await Gen.Select(days, Gen.Int[0, int.MaxValue]).SampleAsync(async (row, seed) =>
        {
            var readings = row.Select((value, index) => Reading(index * 1.5, value)).ToList();
            var shuffled = readings.OrderBy(reading => unchecked(((int)(reading.MeasuredAt - Start).TotalMinutes + 1) * (seed | 1) * -1640531527))
                .ToList();
            string expected = await VerdictsAsync(readings, readings.Count);
            if (expected.Contains("Stuck", StringComparison.Ordinal))
                Interlocked.Increment(ref stuck);
            Assert.Equal(expected, await VerdictsAsync(shuffled, 1 + (seed % 7)));
        }, iter: 100);
        Assert.True(stuck > 5, $"only {stuck} of the histories had a stuck sensor");
    }

    private static async Task<string> VerdictsAsync(List<Reading> readings, int batch)
    {
        var log = new LogInMemory();
        foreach (Reading[] chunk in readings.Chunk(batch))
        {
            log.Write(chunk);
            await new JudgingPass(log).RunAsync(CancellationToken.None);
        }
        return string.Join(' ', log.All.Select(entry => $"{entry.Reading.MeasuredAt}={entry.Verdict}"));
    }

    private static async Task<LogInMemory> JudgedAsync(IEnumerable<(double Hour, double Celsius)> rows)
    {
        var log = new LogInMemory();
        log.Write(rows.Select(row => Reading(row.Hour, row.Celsius)));
        await new JudgingPass(log).RunAsync(CancellationToken.None);
        return log;
    }

    private static IEnumerable<double> Hours(int from, int until) => Enumerable.Range(from, until - from + 1).Select(hour => (double)hour);

    private static Instant At(double hours) => Start + Duration.FromHours(hours);

    private static Reading Reading(double hours, double celsius) =>
        new(1, Quantity.Temperature, celsius, At(hours), Start + Duration.FromDays(5), TimeSource.Payload);
}
