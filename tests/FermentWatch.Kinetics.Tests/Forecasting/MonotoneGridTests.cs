using FermentWatch.Kinetics.Chemistry;
using FermentWatch.Kinetics.Ensemble;
using FermentWatch.Kinetics.Guilds;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kinetics.Simulation;
using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Kinetics.Tests.Forecasting;

/// <summary>The median member of twenty vegetables at seven salts and ten temperatures.</summary>
public class MonotoneGridTests
{
    private const double Span = 200;
    private const double HalfPercent = 0.5;

    private static readonly double[] Salts = [1.5, 2, 2.5, 3, 4, 5, 6];

    private static readonly double[] Temperatures = [0, 2, 5, 8, 11, 14, 17, 20, 22, 24];

    public static TheoryData<string> Vegetables() => [.. Vegetable.All.Take(20).Select(vegetable => vegetable.Name)];

    [Theory]
    [MemberData(nameof(Vegetables))]
    public void HalfAPercentMade_SaltierOrColderBelowTheOptimum_IsNeverEarlier(string name)
    {
        double[][] days = [.. Salts.Select(salt => Temperatures.Select(celsius => Day(name, salt, celsius)).ToArray())];
        for (int s = 0; s < Salts.Length; s++)
        {
            for (int t = 0; t < Temperatures.Length; t++)
            {
                double lessSalt = days[Math.Max(s - 1, 0)][t];
                double colder = days[s][Math.Max(t - 1, 0)];
                Assert.True(days[s][t] >= 0.999 * lessSalt,
                    $"{name}: {Salts[s]} % at {Temperatures[t]} C on day {days[s][t]:0.00}, less salt on {lessSalt:0.00}");
                Assert.True(days[s][t] <= 1.001 * colder,
                    $"{name}: {Salts[s]} % at {Temperatures[t]} C on day {days[s][t]:0.00}, colder on {colder:0.00}");
            }
        }
    }

    /// <summary>One hexose makes two acids at most.</summary>
    [Theory]
    [MemberData(nameof(Vegetables))]
    public void Acid_AnySaltAndTemperature_IsNeverMoreThanTheSugarGives(string name)
    {
        foreach ((double salt, double celsius) in Salts.SelectMany(salt => Temperatures.Select(celsius => (salt, celsius))))
        {
            JarMembers jar = Jar(name, salt, celsius);
            var trace = new Trace(1, [0, Span], []);
            jar.Run(new double[Deviate.Count], new LaneTable(1), trace);
            double hexose = Recipe(name, salt).Shares.Sum(share =>
                share.Vegetable.Composition.SugarsGrams / share.Vegetable.Composition.WaterGrams * 1000 / 180.16);
            double native = TitratableAcidity.PercentLacticPerMole * jar.ConstantsOf(new double[Deviate.Count])[MemberConstant.NativeAcidity];
            Assert.InRange(trace.Acidity[1] - native, 0, (2 * hexose * TitratableAcidity.PercentLacticPerMole) + 1e-6);
        }
    }

    private static double Day(string name, double salt, double celsius)
    {
        JarMembers jar = Jar(name, salt, celsius);
        double native = TitratableAcidity.PercentLacticPerMole * jar.ConstantsOf(new double[Deviate.Count])[MemberConstant.NativeAcidity];
        var passage = new Passage(Watched.Acidity, native + HalfPercent, 1);
        jar.Run(new double[Deviate.Count], new LaneTable(1), new Trace(1, [Span], [passage]));
        return double.IsNaN(passage.Days[0]) ? Span : passage.Days[0];
    }

    private static JarMembers Jar(string name, double salt, double celsius) =>
        new(Recipe(name, salt), TemperatureCourse.Constant(celsius, 0), Span, ModelParameters.Current, new PriorSpread());

    private static JarRecipe Recipe(string name, double salt) =>
        JarRecipe.Of(Vegetable.TryFind(name, out Vegetable? vegetable) ? vegetable : throw new InvalidOperationException(name), Cut.Sliced, salt);
}
