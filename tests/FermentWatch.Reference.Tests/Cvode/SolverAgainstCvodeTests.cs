using FermentWatch.Kinetics.Ensemble;
using FermentWatch.Kinetics.Guilds;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kinetics.Simulation;
using FermentWatch.Kinetics.Temperature;
using FermentWatch.Reference.Tests.Published;

namespace FermentWatch.Reference.Tests.Cvode;

/// <summary>The product's solver against CVODE at 1e-10 on random jars and temperature courses.</summary>
public class SolverAgainstCvodeTests
{
    private const double Days = 90;
    private const uint RecipePurpose = 101;

    private static readonly int Jars = Environment.GetEnvironmentVariable("FERMENTWATCH_TESTS_LONG") == "1" ? 200 : 20;

    [Fact]
    public void Run_RandomJars_StaysWithinTwoThousandthsOfCvode()
    {
        double[] hours = [.. Enumerable.Range(0, (int)Days * 4 + 1).Select(i => 6.0 * i)];
        double worstPh = 0;
        double worstAcidity = 0;
        for (uint seed = 0; seed < Jars; seed++)
        {
            (double ph, double acidity) = Compare(seed, hours);
            worstPh = Math.Max(worstPh, ph);
            worstAcidity = Math.Max(worstAcidity, acidity);
        }
        Assert.True(worstPh <= 0.002 && worstAcidity <= 0.002, $"off by {worstPh:0.00000} pH and {worstAcidity:0.00000} % over {Jars} jars");
    }

    private static (double Ph, double Acidity) Compare(uint seed, double[] hours)
    {
        JarMembers jar = new(RandomRecipe(seed), RandomCourse(seed), Days, ModelParameters.Current, new PriorSpread());
        double[] deviates = [.. Enumerable.Range(0, 8 * Deviate.Count).Select(i => Philox.Normal(seed, RecipePurpose + 1, 0, (uint)i))];
        var trace = new Trace(8, [.. hours.Select(hour => hour / 24)], []);
        jar.Run(deviates, new LaneTable(8), trace);
        double[] celsius = jar.Climate.Celsius.ToArray();
        double[] spread = jar.Climate.Spread.ToArray();
        (double[] ph, double[] acidity, _) = CvodeReference.Instance.Solve(jar.ConstantsOf(deviates.AsSpan(0, Deviate.Count)), celsius, spread,
            hours, 1e-10);
        double offPh = Enumerable.Range(0, hours.Length).Max(i => Math.Abs(ph[i] - trace.Ph[i * 8]));
        double offAcidity = Enumerable.Range(0, hours.Length).Max(i => Math.Abs(acidity[i] - trace.Acidity[i * 8]));
        return (offPh, offAcidity);
    }

    private static double Between(uint seed, uint index, double low, double high) =>
        low + ((high - low) * Philox.Uniform(seed, RecipePurpose, 0, index));

    private static JarRecipe RandomRecipe(uint seed) => new()
    {
        Shares = [new ProduceShare(Vegetable.All[(int)Between(seed, 0, 0, Vegetable.All.Count - 0.001)], 1),
            new ProduceShare(Vegetable.Of("cabbage"), Between(seed, 1, 0.01, 1))],
        Cut = (Cut)(int)Between(seed, 2, 0, 4.999),
        Salt = new SaltDose(Between(seed, 3, 1.5, 6), 0.1),
        AddedWaterKilograms = Between(seed, 4, 0, 1),
        VesselLitres = Between(seed, 5, 0.5, 20),
    };

    /// <summary>A level, a daily cycle, a drift and the noise of a sensor.</summary>
    private static TemperatureCourse RandomCourse(uint seed)
    {
        double level = Between(seed, 6, 4, 28);
        double swing = Between(seed, 7, 0, 3);
        double drift = Between(seed, 8, -5, 5);
        double noise = Between(seed, 9, 0, 0.6);
        return TemperatureCourse.FromSteps([.. Enumerable.Range(0, (int)Days * 96).Select(i => TemperatureStep.Room(Math.Clamp(
            level + (swing * Math.Sin(2 * Math.PI * i / 96)) + (drift * Math.Sin(2 * Math.PI * i / (96 * 17)))
                + (noise * Philox.Normal(seed, RecipePurpose + 2, 0, (uint)i)), -5, 45)))], TypicalRoom.Usual);
    }
}
