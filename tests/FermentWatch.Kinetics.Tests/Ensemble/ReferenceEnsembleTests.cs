using FermentWatch.Kinetics.Ensemble;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Guilds;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kinetics.Simulation;
using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Kinetics.Tests.Ensemble;

/// <summary>
/// 512 moved members against 20,000 members of the prior that are weighed and never moved: another road to the same
/// posterior. Medians must agree within a tenth, the ends, of which each ensemble has only some fifty members, within 0.15.
/// </summary>
public class ReferenceEnsembleTests
{
    private const int Many = 20_000;
    private const int Few = 512;
    private const double Span = 40;

    private static readonly JarMembers Jar =
        new(JarRecipe.Of(Vegetable.Of("cabbage"), Cut.Shredded, 2.25), TemperatureCourse.Constant(18, 1.5), Span, ModelParameters.Current,
        new PriorSpread());

    public static TheoryData<string, PhReading[]> Scenarios() => new()
    {
        { "nothing", [] },
        { "a meter on day 3", [new(3, 4.55, PhMethod.Meter)] },
        { "strips on days 2, 4 and 6", [new(2, 5.7, PhMethod.Strip), new(4, 4.5, PhMethod.Strip), new(6, 4.2, PhMethod.Strip)] },
    };

    [Theory]
    [MemberData(nameof(Scenarios))]
    public void Quantiles_FewMovedMembers_AgreeWithManyWeighedOnes(string scenario, PhReading[] readings)
    {
        double[] prior = MemberPrior.Standard.Draw(99, Many);
        double[][] reference = Answers(prior, Many);
        double[] weights = Weights(prior, readings);
        double[] moved = MemberPrior.Standard.Draw(7, Few);
        new ReadingFit(Jar, new Evidence(readings), Few).Run(moved, MemberPrior.Standard, 7);
        double[][] few = Answers(moved, Few);
        for (int quantity = 0; quantity < few.Length; quantity++)
        {
            foreach (double share in new[] { 0.1, 0.5, 0.9 })
            {
                double wanted = Weighted(reference[quantity], weights, share);
                double got = Weighted(few[quantity], [.. Enumerable.Repeat(1.0, Few)], share);
                Assert.True(Math.Abs(got - wanted) <= (share == 0.5 ? 0.1 : 0.15) * wanted,
                    $"{scenario}: quantity {quantity} at {share}: {got:0.000} for {wanted:0.000}");
            }
        }
    }

    private static double[][] Answers(double[] deviates, int members)
    {
        var line = new Passage(Watched.BrinePh, 4.6, members);
        var sour = new Passage(Watched.Sourness, 20, members);
        var trace = new Trace(members, [10, Span], [line, sour]);
        Jar.Run(deviates, new LaneTable(members), trace);
        return [line.Days, sour.Days, trace.Ph[..members], trace.Acidity[..members]];
    }

    private static double[] Weights(double[] deviates, PhReading[] readings)
    {
        double[] logs = new double[Many];
        if (readings.Length > 0)
        {
            var trace = new Trace(Many, [.. readings.Select(reading => reading.Day)], []);
            Jar.Run(deviates, new LaneTable(Many), trace);
            for (int m = 0; m < Many; m++)
                logs[m] = readings.Select((reading, i) => PhLikelihood.LogDensity(reading, trace.Ph[(i * Many) + m])).Sum();
        }
        double most = logs.Max();
        return [.. logs.Select(log => Math.Exp(log - most))];
    }

    private static double Weighted(double[] values, double[] weights, double share)
    {
        double wanted = share * weights.Sum();
        double reached = 0;
        foreach ((double value, double weight) in values.Select(value => double.IsNaN(value) ? 1e9 : value).Zip(weights).OrderBy(pair => pair.First))
        {
            reached += weight;
            if (reached >= wanted)
                return value;
        }
        throw new InvalidOperationException("Weights do not sum.");
    }
}
