using FermentWatch.Kinetics.Ensemble;
using FermentWatch.Kinetics.Guilds;
using FermentWatch.Kinetics.Simulation;
using FermentWatch.Kinetics.Temperature;
using FermentWatch.Reference.Tests.Published;

namespace FermentWatch.Calibration;

/// <summary>What the model says of a published row: the value on its day, and the day of its value.</summary>
/// <param name="Value">The quantity on the row's day.</param>
/// <param name="Day">The day at which the row's middle value is reached; null where it is not within four times the row's day.</param>
internal sealed record CourseAnswer(double Value, double? Day)
{
    /// <summary>Acidity at which kimchi counts as ripe: E08, 0.6 to 0.8 % (Mheen).</summary>
    private const double RipePercent = 0.65;

    /// <summary>Answers of many parameter sets to one row, side by side in the lanes.</summary>
    public static CourseAnswer[] Of(PublishedCourse row, IReadOnlyList<ModelParameters> models)
    {
        var table = new LaneTable(models.Count);
        double[] centre = new double[Deviate.Count];
        for (int i = 0; i < models.Count; i++)
            table.Set(i, new MemberBuilder(row.Contents(models[i]), models[i], new PriorSpread(), 0).Build(centre));
        double span = 4 * row.Day;
        var passage = new Passage(row.Quantity == "ph" ? Watched.BrinePh : Watched.Acidity, LevelOf(row), models.Count);
        var trace = new Trace(models.Count, [row.Day, span], [passage]);
        JarSolver.Run(table, JarClimate.Of(TemperatureCourse.Constant(row.Celsius, 0), 1, span), trace);
        double[] values = row.Quantity switch { "ph" => trace.Ph, "lab_log10_cfu_per_ml" => trace.Count, _ => trace.Acidity };
        return [.. Enumerable.Range(0, models.Count).Select(i => new CourseAnswer(
            row.Quantity == "lab_log10_cfu_per_ml" ? Math.Log10(values[i]) + 9 : values[i],
            double.IsNaN(passage.Days[i]) || row.Quantity == "lab_log10_cfu_per_ml" ? null : passage.Days[i]))];
    }

    private static double LevelOf(PublishedCourse row) => row.Quantity == "ripe_day" ? RipePercent : row.Middle;
}
