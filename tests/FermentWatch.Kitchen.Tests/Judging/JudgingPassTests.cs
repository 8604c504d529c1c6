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
            var shuffled = readings.OrderBy(reading => unchecked(((int)(reading.MeasuredAt - Start).TotalMinutes + 1) * (shuffle | 1) * -1640531527))
                .ToList();
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

    [Fact]
    public async Task RunAsync_ReadingOfTheLastMillisecondThereIs_IsNotBelievedAndStopsNothing()
    {
        var log = new LogInMemory();
        var last = new Reading(1, Quantity.Temperature, 20, Instant.FromUtc(9999, 12, 31, 23, 59, 59) + Duration.FromMilliseconds(999), Start,
            TimeSource.Payload);
        log.Write([last, Reading(0, 20), last with { MeasuredAt = Instant.FromUnixTimeSeconds(253_402_300_799) }, Reading(5, 20)]);
        await new JudgingPass(log).RunAsync(CancellationToken.None);
        Assert.Equal([Verdict.Counts, Verdict.Counts, Verdict.ClockNotBelieved, Verdict.ClockNotBelieved], log.All.Select(entry => entry.Verdict));
    }

    [Fact]
    public async Task RunAsync_ReadingThatCannotBeJudged_IsSetAsideAndTheRestIsJudged()
    {
        Instant poison = Start + Duration.FromMinutes(15);
        var log = new LogInMemory
        {
            BeforeSettling = changes =>
            {
                if (changes.Any(change => change.MeasuredAt == poison && change.Verdict != Verdict.SetAside))
                    throw new ArgumentException("It cannot be written.");
            },
        };
        // An hour apart, so that no other verdict has to be written along with it.
        log.Write([Reading(-300, 20), Reading(-200, 21), Reading(15, 20), Reading(200, 20), Reading(300, 21)]);
        var pass = new JudgingPass(log);
        await pass.RunAsync(CancellationToken.None);
        Assert.Equal([Verdict.Counts, Verdict.Counts, Verdict.SetAside, Verdict.Counts, Verdict.Counts], log.All.Select(entry => entry.Verdict));
        Assert.Equal(new SetAsideReading(1, Quantity.Temperature, poison, "It cannot be written."), Assert.Single(pass.SetAside.Last));
        Assert.Equal(1, pass.SetAside.Count);

        log.Write([Reading(400, 20)]);
        await pass.RunAsync(CancellationToken.None);
        Assert.Equal(Verdict.Counts, log.VerdictAt(Start + Duration.FromMinutes(400)));
    }

    [Fact]
    public async Task RunAsync_QuantityNobodyKnows_IsSetAsideAndTheRestIsJudged()
    {
        var log = new LogInMemory();
        log.Write([Reading(0, 20), Reading(200, 20) with { Quantity = (Quantity)99 }, Reading(400, 20)]);
        await new JudgingPass(log).RunAsync(CancellationToken.None);
        Assert.Equal([Verdict.Counts, Verdict.SetAside, Verdict.Counts], log.All.Select(entry => entry.Verdict));
    }

    [Fact]
    public async Task RunAsync_OneSensorSendsMonths_OthersWaitForOneTurnOfIt()
    {
        var log = new LogInMemory();
        log.Write(Enumerable.Range(0, 25_000).Select(minute => Reading(minute, 20 + (minute % 3))));
        log.Write([Reading(-1000, 20) with { SensorKey = 2 }]);
        var order = new List<int>();
        log.BeforeSettling = changes => order.Add(changes[0].SensorKey);
        await new JudgingPass(log).RunAsync(CancellationToken.None);
        int turn = order.IndexOf(2);
        Assert.InRange(turn, 1, 4);
        Assert.True(order.Count > turn + 3, $"all but {order.Count - turn - 1} of the other's were written before it");
        Assert.DoesNotContain(log.All, entry => entry.Verdict == Verdict.Pending);
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
