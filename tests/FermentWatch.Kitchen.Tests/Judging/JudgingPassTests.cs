using CsCheck;
using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Tests.Doubles;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Judging;

public class JudgingPassTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 10, 1, 8, 0);
    private static readonly double[] Values = [19.5, 20.0, 20.5, 28.0, 31.0, 85.0, -127.0, 60.0];

    [Fact]
    public async Task RunAsync_ShuffledAndBatched_EndsInTheSameVerdicts()
    {
        var histories = Gen.Select(Gen.Int[0, 400], Gen.Int[0, Values.Length - 1].Select(i => Values[i]))
            .List[1, 60].Select(rows => rows.DistinctBy(row => row.Item1).Select(row => Reading(row.Item1, row.Item2)).ToList());
        await Gen.Select(histories, Gen.Int[0, int.MaxValue]).SampleAsync(async (readings, shuffle) =>
        {
            var shuffled = readings.OrderBy(reading => unchecked(((int)(reading.MeasuredAt - Start).TotalMinutes + 1) * (shuffle | 1) * -1640531527)).ToList();
            Assert.Equal(await VerdictsAsync(readings, readings.Count), await VerdictsAsync(shuffled, 1 + (shuffle % 5)));
        }, iter: 200);
    }

    [Fact]
    public async Task RunAsync_LateNeighbours_ReviseAnEarlierVerdict()
    {
        var log = new LogInMemory();
        log.Write([Reading(0, 20), Reading(5, 20), Reading(10, 20), Reading(15, 31)]);
        await new JudgingPass(log).RunAsync(CancellationToken.None);
        Assert.Equal(Verdict.Jump, log.VerdictAt(Start + Duration.FromMinutes(15)));

        log.Write([Reading(20, 31), Reading(25, 31), Reading(30, 31)]);
        await new JudgingPass(log).RunAsync(CancellationToken.None);
        Assert.Equal(Verdict.Counts, log.VerdictAt(Start + Duration.FromMinutes(15)));
    }

    private static async Task<string> VerdictsAsync(List<Reading> readings, int batch)
    {
        var log = new LogInMemory();
        var pass = new JudgingPass(log);
        foreach (Reading[] chunk in readings.Chunk(batch))
        {
            log.Write(chunk);
            await pass.RunAsync(CancellationToken.None);
        }
        return string.Join(' ', log.All.Select(entry => $"{entry.Reading.MeasuredAt}={entry.Verdict}"));
    }

    private static Reading Reading(int minutes, double celsius)
    {
        Instant at = Start + Duration.FromMinutes(minutes);
        return new Reading(1, Quantity.Temperature, celsius, at, Start + Duration.FromHours(8), TimeSource.Payload);
    }
}
