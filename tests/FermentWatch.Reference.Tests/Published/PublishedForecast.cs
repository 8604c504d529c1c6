using FermentWatch.Kinetics.Ensemble;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Guilds;
using FermentWatch.Kinetics.Simulation;
using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Reference.Tests.Published;

/// <summary>The product's ensemble on a published row: 256 members of the prior, the salt weighed, the temperature kept within half a
/// degree.</summary>
internal static class PublishedForecast
{
    private const int Members = 256;
    private const double SpreadCelsius = 0.5;

    /// <summary>Quantiles of the row's quantity on its day.</summary>
    public static Quantiles ValueOf(PublishedCourse row) => ValueOf(row, ModelParameters.Current);

    /// <summary>The same under other parameters.</summary>
    public static Quantiles ValueOf(PublishedCourse row, ModelParameters model)
    {
        Trace trace = Run(row, model, [row.Day], []);
        double[] values = row.Quantity switch
        {
            "ph" => trace.Ph,
            "lab_log10_cfu_per_ml" => [.. trace.Count.Select(count => Math.Log10(count) + 9)],
            _ => trace.Acidity,
        };
        return QuantileOf.Values(values, new double[Members]);
    }

    /// <summary>Quantiles of the day at which an acidity is reached.</summary>
    public static PassageDays DayOfAcidity(PublishedCourse row, double percent)
    {
        var passage = new Passage(Watched.Acidity, percent, Members);
        Run(row, ModelParameters.Current, [6 * row.Day], [passage]);
        return QuantileOf.Days(passage.Days, new double[Members]);
    }

    private static Trace Run(PublishedCourse row, ModelParameters model, double[] days, IReadOnlyList<Passage> passages)
    {
        JarContents contents = row.Contents(model);
        var jar = new JarMembers(contents, 0.05 * contents.SaltPercent, TemperatureCourse.Constant(row.Celsius, SpreadCelsius), days[^1], model,
            new PriorSpread());
        var trace = new Trace(Members, days, passages);
        jar.Run(MemberPrior.Standard.Draw(1, Members), new LaneTable(Members), trace);
        return trace;
    }
}
