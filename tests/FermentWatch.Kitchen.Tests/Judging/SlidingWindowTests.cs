using CsCheck;
using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Tests.Judging.Reference;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Judging;

/// <summary>The sliding window says of every reading what gathering its neighbours anew would say.</summary>
public class SlidingWindowTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 10, 1, 8, 0);

    private static readonly Gen<double> Value = Gen.Frequency(
        (6, Gen.Double[18, 22]), (3, Gen.Int[36, 44].Select(half => half / 2.0)), (3, Gen.Double[-30, 60]), (1, Gen.Const(85.0)),
        (1, Gen.Double[71, 99]),
        (1, Gen.Const(-127.0)), (1, Gen.Const(0.0)), (1, Gen.Const(-0.0)), (1, Gen.Const(1e300)));

    // Runs of one value make levels and steps; pauses from a tenth of a second to an hour make windows of every size.
    private static readonly Gen<(int Pause, double Value)[]> Series =
        Gen.Select(Gen.Frequency((4, Gen.Int[100, 20_000]), (4, Gen.Int[20_000, 400_000]), (1, Gen.Int[400_000, 3_600_000])), Value, Gen.Int[1, 12])
            .Select(run => Enumerable.Repeat((run.Item1, run.Item2), run.Item3)).Array[1, 40]
            .Select(runs => runs.SelectMany(run => run).ToArray());

    [Fact]
    public void Judge_AnySeries_SaysWhatEachReadingAloneWouldBeTold()
    {
        var seen = new System.Collections.Concurrent.ConcurrentDictionary<Verdict, int>();
        Gen.Select(Series, Gen.Enum<Quantity>(), Gen.Int[0, 40], Gen.Int[0, 40]).Sample(
            (rows, quantity, skipped, left) =>
            {
                List<Reading> readings = Readings(rows, quantity);
                int first = Math.Min(skipped, readings.Count), end = Math.Max(first, readings.Count - left);
                var range = MeasuredQuantity.Of(quantity).Range;
                var expected = JudgedOneByOne.Judge(readings, first, end, range).ToList();
                foreach (Verdict verdict in expected)
                    seen.AddOrUpdate(verdict, 1, (_, count) => count + 1);
                return expected.SequenceEqual(ReadingJudge.Judge(readings, first, end, range));
            },
            iter: Environment.GetEnvironmentVariable("FERMENTWATCH_TESTS_LONG") == "1" ? 200_000 : 3_000);
        Assert.All(
            (Verdict[])[Verdict.Counts, Verdict.Jump, Verdict.Sentinel, Verdict.OutOfRange, Verdict.ClockNotBelieved, Verdict.TooOld],
            verdict => Assert.True(seen.GetValueOrDefault(verdict) > 100, $"only {seen.GetValueOrDefault(verdict)} were {verdict}"));
    }

    private static List<Reading> Readings((int Pause, double Value)[] rows, Quantity quantity)
    {
        var readings = new List<Reading>();
        Instant at = Start;
        foreach ((int pause, double value) in rows)
        {
            at += Duration.FromMilliseconds(pause);
            Instant received = (pause % 29) switch { 0 => at - Duration.FromMinutes(6), 1 => at + Duration.FromDays(367), _ => at };
            readings.Add(new Reading(1, quantity, value, at, received, TimeSource.Payload));
        }
        return readings;
    }
}
