using FermentWatch.Kinetics.Guilds;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kinetics.Simulation;
using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Kinetics.Ensemble;

/// <summary>One jar, ready to be run with any members.</summary>
internal sealed class JarMembers
{
    private readonly MemberBuilder _builder;

    public JarMembers(JarRecipe recipe, TemperatureCourse course, double days, ModelParameters model, PriorSpread spread)
        : this(JarContents.Of(recipe, model), recipe.Salt.StandardDeviationPercent, course, days, model, spread)
    {
    }

    public JarMembers(JarContents contents, double saltDeviationPercent, TemperatureCourse course, double days, ModelParameters model,
        PriorSpread spread)
    {
        Climate = JarClimate.Of(course, contents.VesselLitres, days);
        _builder = new MemberBuilder(contents, model, spread, saltDeviationPercent);
    }

    /// <summary>Temperature inside the jar.</summary>
    public JarClimate Climate { get; }

    /// <summary>The constants of one member, in the order of <see cref="MemberConstant"/>.</summary>
    public double[] ConstantsOf(ReadOnlySpan<double> deviates) => _builder.Build(deviates).ToArray();

    /// <summary>Runs members through the days of a trace.</summary>
    /// <param name="deviates">[member x count + deviate].</param>
    /// <param name="table">Holds the members' constants; reused from run to run.</param>
    /// <param name="trace">Takes what is written down.</param>
    /// <param name="slack">How many times the usual error is allowed to a step.</param>
    /// <param name="from">Where to go on from; null for a run from packing on.</param>
    /// <param name="keep">Takes the members at its time; null where nothing is kept.</param>
    public void Run(ReadOnlySpan<double> deviates, LaneTable table, Trace trace, double slack = 1, Checkpoint? from = null, Checkpoint? keep = null)
    {
        for (int m = 0; m < table.Members; m++)
            table.Set(m, _builder.Build(deviates.Slice(m * Deviate.Count, Deviate.Count)));
        JarSolver.Run(table, Climate, trace, slack, from, keep);
    }
}
