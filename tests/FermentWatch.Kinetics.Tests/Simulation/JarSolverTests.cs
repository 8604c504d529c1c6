using System.Runtime.Intrinsics;
using FermentWatch.Kinetics.Chemistry;
using FermentWatch.Kinetics.Ensemble;
using FermentWatch.Kinetics.Guilds;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kinetics.Simulation;
using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Kinetics.Tests.Simulation;

public class JarSolverTests
{
    private const int Members = 16;

    private static readonly JarRecipe Pickles =
        JarRecipe.Of(Vegetable.Of("cucumber"), Cut.Whole, 4) with { AddedWaterKilograms = 0.8, VesselLitres = 2 };

    /// <summary>e to the x over the whole range, against the platform's own.</summary>
    [Fact]
    public void Exp_WholeRange_IsWithinTwoPartsInAHundredMillion()
    {
        for (double x = -690; x < 690; x += 0.37)
        {
            double got = LaneMath.Exp(Vector256.Create(x))[3];
            Assert.InRange(got / Math.Exp(x), 1 - 2e-8, 1 + 2e-8);
        }
    }

    /// <summary>Where nothing grows, solutes even out as the closed form says, and no acid is made.</summary>
    [Fact]
    public void Run_NothingGrows_SolutesEvenOutExponentially()
    {
        ModelParameters still =
            ModelParameters.Current with {
            Guilds = [.. ModelParameters.Current.Guilds.Select(guild => guild with { OptimumRatePerHour = 0, MaintenanceHexosePerHour = 0 })] };
        var jar = new JarMembers(Pickles, TemperatureCourse.Constant(20, 0), 10, still, new PriorSpread());
        var trace = new Trace(1, [0, 2, 10], []);
        double[] centre = new double[Deviate.Count];
        jar.Run(centre, new LaneTable(1), trace);
        double[] c = jar.ConstantsOf(centre);
        for (int i = 0; i < 3; i++)
        {
            double native = 1 - ((1 - c[MemberConstant.OuterStart]) * Math.Exp(-c[MemberConstant.Exchange] * 24 * trace.Days[i]));
            Assert.Equal(Math.Max(0, native * c[MemberConstant.NativeAcidity] * TitratableAcidity.PercentLacticPerMole), trace.Acidity[i], 1e-7);
        }
    }

    /// <summary>The lanes' charge balance and the plain one are the same equations.</summary>
    [Fact]
    public void Run_FirstMoment_HasThePhOfTheChargeBalance()
    {
        JarRecipe recipe = JarRecipe.Of(Vegetable.Of("cabbage"), Cut.Shredded, 2.25) with { VesselLitres = 1 };
        JarContents contents = JarContents.Of(recipe, ModelParameters.Current);
        var trace = new Trace(1, [0, 0.5], []);
        new JarMembers(recipe, TemperatureCourse.Constant(20, 0), 1, ModelParameters.Current, new PriorSpread())
            .Run(new double[Deviate.Count], new LaneTable(1), trace);
        Assert.Equal(ChargeBalance.Ph(contents.Native, 20), trace.Ph[0], 0.003);
        Assert.Equal(Vegetable.Of("cabbage").RawPh, trace.Ph[0], 0.2);
    }

    [Fact]
    public void Run_OnceBegun_AllocatesNothing()
    {
        var jar = new JarMembers(Pickles, TemperatureCourse.Constant(20), 30, ModelParameters.Current, new PriorSpread());
        var table = new LaneTable(Members);
        var trace = new Trace(Members, [0, 10, 30], [new Passage(Watched.BrinePh, 4.6, Members), new Passage(Watched.CentrePh, 4.6, Members)]);
        jar.Run(MemberPrior.Standard.Draw(3, Members), table, trace);
        long before = GC.GetAllocatedBytesForCurrentThread();
        JarSolver.Run(table, jar.Climate, trace);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    /// <summary>Acid moves into large pieces as slowly as sugar moves out: the middle passes the line later than the brine.</summary>
    [Fact]
    public void Run_WholeCucumbers_TheMiddleSoursAfterTheBrine()
    {
        (double brine, double centre) = Lines(Pickles);
        Assert.InRange(centre - brine, 1, 15);
    }

    [Fact]
    public void Run_Shreds_TheMiddleSoursWithTheBrine()
    {
        (double brine, double centre) = Lines(JarRecipe.Of(Vegetable.Of("cabbage"), Cut.Shredded, 2.25));
        Assert.InRange(centre - brine, 0, 0.5);
    }

    /// <summary>A member's course does not depend on who shares its block by more than the solver's own error.</summary>
    [Fact]
    public void Run_AloneOrInCompany_IsTheSameToTheSolversError()
    {
        double[] deviates = MemberPrior.Standard.Draw(5, Members);
        var jar = new JarMembers(Pickles, TemperatureCourse.Constant(20), 30, ModelParameters.Current, new PriorSpread());
        var together = new Trace(Members, [3, 10, 30], []);
        jar.Run(deviates, new LaneTable(Members), together);
        var alone = new Trace(1, [3, 10, 30], []);
        jar.Run(deviates.AsSpan(0, Deviate.Count), new LaneTable(1), alone);
        for (int i = 0; i < 3; i++)
            Assert.Equal(together.Ph[i * Members], alone.Ph[i], 0.002);
    }

    private static (double Brine, double Centre) Lines(JarRecipe recipe)
    {
        var brine = new Passage(Watched.BrinePh, 4.6, 1);
        var centre = new Passage(Watched.CentrePh, 4.6, 1);
        new JarMembers(recipe, TemperatureCourse.Constant(20, 0), 40, ModelParameters.Current, new PriorSpread())
            .Run(new double[Deviate.Count], new LaneTable(1), new Trace(1, [40], [brine, centre]));
        return (brine.Days[0], centre.Days[0]);
    }
}
