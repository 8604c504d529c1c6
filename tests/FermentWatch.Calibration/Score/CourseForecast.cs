using FermentWatch.Kinetics.Ensemble;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Guilds;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Simulation;
using FermentWatch.Kinetics.Temperature;
using FermentWatch.Reference.Tests.Published;

namespace FermentWatch.Calibration.Score;

/// <summary>The product's ensemble on a published jar under other parameters, with what was measured before.</summary>
internal static class CourseForecast
{
    private const int Members = 256;
    private const double SpreadCelsius = 0.5;

    /// <summary>What is expected of a row after earlier rows of its jar.</summary>
    public static Quantiles Of(PublishedCourse row, IReadOnlyList<PublishedCourse> before, ModelParameters model)
    {
        Trace trace = Run(row, before, model, row.Day, []);
        return QuantileOf.Values(row.Quantity == "ph" ? trace.Ph : trace.Acidity, new double[Members]);
    }

    /// <summary>The day at which a row's pH is expected.</summary>
    public static PassageDays DayOf(PublishedCourse row, ModelParameters model)
    {
        var passage = new Passage(Watched.BrinePh, row.Middle, Members);
        Run(row, [], model, 6 * row.Day, [passage]);
        return QuantileOf.Days(passage.Days, new double[Members]);
    }

    private static Trace Run(PublishedCourse row, IReadOnlyList<PublishedCourse> before, ModelParameters model, double day, IReadOnlyList<Passage> passages)
    {
        JarContents contents = row.Contents(model);
        var jar = new JarMembers(contents, 0.05 * contents.SaltPercent, TemperatureCourse.Constant(row.Celsius, SpreadCelsius), day, model, new PriorSpread());
        double[] members = MemberPrior.Standard.Draw(1, Members);
        PhReading[] readings = [.. before.Where(each => each.Quantity == "ph").Select(each => new PhReading(each.Day, each.Middle, PhMethod.Meter))];
        AcidityReading[] titrations = [.. before.Where(each => each.Quantity != "ph").Select(each => new AcidityReading(each.Day, each.Middle))];
        new ReadingFit(jar, new Evidence(readings, titrations), Members).Run(members, MemberPrior.Standard, 1);
        var trace = new Trace(Members, [day], passages);
        jar.Run(members, new LaneTable(Members), trace);
        return trace;
    }
}
