using CsCheck;
using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Judging;

public class JumpTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 10, 1, 8, 0);

    private static readonly Gen<int> Seed = Gen.Int[0, int.MaxValue];

    [Theory]
    [InlineData(22.5, Verdict.Counts)]
    [InlineData(22.7, Verdict.Jump)]
    public void Judge_QuietSensor_TakesTwoDegreesFromTheMiddle(double value, Verdict expected) =>
        Assert.Equal(expected, Verdicts(5, 20.5, 20.5, 20.5, value, 20.5, 20.6, 20.5)[3]);

    // Distances from the median 20 are 1, 1, 2, 2, 3, 3: noise 1.4826 x 2, widened by 16 / 6, six times that is 47.4.
    [Fact]
    public void Judge_NoisySensorFewNeighbours_TakesTheWideLimit() =>
        Assert.Equal(Verdict.Counts, Verdicts(5, 17, 18, 19, 45, 21, 22, 23)[3]);

    // Sixteen neighbours, eight at 19.5 and eight at 20.5: noise 1.4826 x 0.5, and six times that is 4.4478 from 20.
    [Theory]
    [InlineData(24.44, Verdict.Counts)]
    [InlineData(24.46, Verdict.Jump)]
    [InlineData(15.56, Verdict.Counts)]
    [InlineData(15.54, Verdict.Jump)]
    public void Judge_KnownNoise_DrawsTheLineAtSixTimesIt(double value, Verdict expected)
    {
        double[] values = [.. Enumerable.Range(0, 17).Select(i => i == 8 ? value : i % 2 == 0 ? 19.5 : 20.5)];
        Assert.Equal(expected, Verdicts(3, values)[8]);
    }

    [Theory]
    [InlineData(26, Verdict.Counts)]
    [InlineData(26.1, Verdict.Jump)]
    public void Judge_FourNeighbours_TakesTheLargestStep(double value, Verdict expected) =>
        Assert.Equal(expected, Verdicts(15, 20, 20, value, 20, 20)[2]);

    [Fact]
    public void Judge_StepsOfHalfADegree_AreNoJumps() =>
        Assert.All(Verdicts(2, [.. Enumerable.Repeat(19.5, 20), 20, 19.5, 20, 20.5, 20, .. Enumerable.Repeat(20.0, 20)]), IsCounted);

    [Fact]
    public void Judge_PhSpike_IsAJump() =>
        Assert.Equal(Verdict.Jump, Verdicts(Quantity.Ph, 5, 3.80, 3.81, 3.80, 4.2, 3.79, 3.80, 3.80)[3]);

    [Fact]
    public void Judge_SensorCarriedIntoTheFridge_CountsThroughout() =>
        Assert.All(Verdicts(5, [.. Enumerable.Repeat(21.0, 12), 14, 9, 6.5, 5.2, 4.6, 4.3, .. Enumerable.Repeat(4.1, 12)]), IsCounted);

    [Fact]
    public void Judge_StepSeenMoreOftenBefore_CountsOnBothSides()
    {
        // Before the step each minute, after it each five, as a sensor does that reports on change: 30 outvote 6.
        (double, double)[] readings = [.. Enumerable.Range(0, 40).Select(i => ((double)i, 20.0)), .. Enumerable.Range(0, 8)
            .Select(i => (40 + (5.0 * i), 12.0))];
        Assert.All(Verdicts(Quantity.Temperature, readings), IsCounted);
    }

    [Fact]
    public void Judge_WindowOpenedForTenMinutes_DoesNotCount_ForTwenty_Counts()
    {
        Assert.Equal(10, Aired(10).Count(verdict => verdict == Verdict.Jump));
        Assert.All(Aired(20), IsCounted);

        static List<Verdict> Aired(int minutes) =>
            Verdicts(1, [.. Enumerable.Repeat(20.0, 60), .. Enumerable.Repeat(14.0, minutes), .. Enumerable.Repeat(20.0, 60)]);
    }

    [Fact]
    public void Judge_NormalNoise_TakesFewerThanOneInAThousandForAJump()
    {
        int judged = 0, jumps = 0;
        Gen.Select(Seed, Gen.Double[0.05, 2.5], Gen.Int[1, 7]).Sample((seed, sigma, minutes) =>
        {
            List<Verdict> verdicts = Verdicts(minutes, [.. Normal(seed, 200).Select(each => 20 + (sigma * each))]);
            // The ends have neighbours on one side only: there the large noise of few of them is known less well.
            Interlocked.Add(ref judged, 180);
            Interlocked.Add(ref jumps, verdicts.Skip(10).Take(180).Count(verdict => verdict == Verdict.Jump));
        }, iter: 300);
        Assert.InRange(jumps * 1000.0 / judged, 0, 1);
    }

    [Fact]
    public void Judge_NoiseBelowASixthOfTheLeastJump_TakesNoneAtAnyRhythm() =>
        Gen.Select(Seed, Gen.Double[0.01, 0.3], Gen.Double[1, 40]).Sample(
            (seed, sigma, minutes) => Verdicts(minutes, [.. Normal(seed, 40).Select(each => 20 + (sigma * Math.Clamp(each, -3, 3)))])
                .TrueForAll(verdict => verdict == Verdict.Counts));

    [Fact]
    public void Judge_SpikeOfTenTimesTheNoiseAndTheLeastJump_IsAlwaysAJump() =>
        Gen.Select(Seed, Gen.Double[0, 1.2], Gen.Bool.Select(up => up ? 1 : -1), Gen.Int[0, 120]).Sample((seed, sigma, sign, index) =>
        {
            double[] values = [.. Normal(seed, 121).Select(each => 20 + (sigma * Math.Clamp(each, -3, 3)))];
            values[index] = 20 + (sign * ((10 * sigma) + 2 + 1e-6));
            return Verdicts(1, values)[index] == Verdict.Jump;
        });

    /// <summary>Normal noise by the method of Box and Muller (1958); the generator's own doubles favour round numbers.</summary>
    private static IEnumerable<double> Normal(int seed, int count)
    {
        var random = new Random(seed);
        for (int i = 0; i < count; i++)
            yield return Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
    }

    private static void IsCounted(Verdict verdict) => Assert.Equal(Verdict.Counts, verdict);

    private static List<Verdict> Verdicts(double everyMinutes, params double[] values) => Verdicts(Quantity.Temperature, everyMinutes, values);

    private static List<Verdict> Verdicts(Quantity quantity, double everyMinutes, params double[] values) =>
        Verdicts(quantity, [.. values.Select((value, i) => (i * everyMinutes, value))]);

    private static List<Verdict> Verdicts(Quantity quantity, (double Minute, double Value)[] values)
    {
        var readings = values.Select(each =>
        {
            Instant at = Start + Duration.FromMinutes(each.Minute);
            return new Reading(1, quantity, each.Value, at, at, TimeSource.Arrival);
        }).ToList();
        return [.. ReadingJudge.Judge(readings, 0, readings.Count, MeasuredQuantity.Of(quantity).Range)];
    }
}
