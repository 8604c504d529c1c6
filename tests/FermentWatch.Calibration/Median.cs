using FermentWatch.Kinetics.Ensemble;
using FermentWatch.Kinetics.Guilds;
using FermentWatch.Kinetics.Simulation;
using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Calibration;

/// <summary>The member in the middle of the prior, under many parameter sets side by side in the lanes.</summary>
internal static class Median
{
    public static void Run(Func<ModelParameters, JarContents> jar, IReadOnlyList<ModelParameters> models, double celsius, double days,
        IReadOnlyList<Passage> passages)
    {
        var table = new LaneTable(models.Count);
        double[] centre = new double[Deviate.Count];
        for (int i = 0; i < models.Count; i++)
            table.Set(i, new MemberBuilder(jar(models[i]), models[i], new PriorSpread(), 0).Build(centre));
        JarSolver.Run(table, JarClimate.Of(TemperatureCourse.Constant(celsius, 0), 1, days), new Trace(models.Count, [days], passages));
    }
}
