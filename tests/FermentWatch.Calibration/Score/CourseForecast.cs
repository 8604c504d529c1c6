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

    /// <summary>The next pH of a jar, and the day it passes 4.6.</summary>
    public static (Quantiles Next, PassageDays Line) Ph(JarContents contents, double celsius, IReadOnlyList<PhReading> readings, double day,
        ModelParameters model, ulong seed)
    {
        double span = 5 * day;
        var line = new Passage(Watched.BrinePh, 4.6, Members);
        Trace trace = Run(contents, celsius, new Evidence(readings), model, [day, span], [line], seed);
        return (QuantileOf.Values(trace.At(trace.Ph, 0), new double[Members]), QuantileOf.Days(line.Days, new double[Members]));
    }

    private static Trace Run(PublishedCourse row, IReadOnlyList<PublishedCourse> before, ModelParameters model, double day,
        IReadOnlyList<Passage> passages)
    {
        PhReading[] readings = [.. before.Where(each => each.Quantity == "ph").Select(each => new PhReading(each.Day, each.Middle, PhMethod.Meter))];
        AcidityReading[] titrations = [.. before.Where(each => each.Quantity != "ph").Select(each => new AcidityReading(each.Day, each.Middle))];
        return Run(row.Contents(model), row.Celsius, new Evidence(readings, titrations), model, [day], passages, 1);
    }

    private static Trace Run(
        JarContents contents, double celsius, Evidence evidence, ModelParameters model, double[] days, IReadOnlyList<Passage> passages, ulong seed)
    {
        var jar = new JarMembers(contents, 0.05 * contents.SaltPercent, TemperatureCourse.Constant(celsius, SpreadCelsius), days[^1], model,
            new PriorSpread());
        double[] members = MemberPrior.Standard.Draw(seed, Members);
        new ReadingFit(jar, evidence, Members).Run(members, MemberPrior.Standard, seed);
        var trace = new Trace(Members, days, passages);
        jar.Run(members, new LaneTable(Members), trace);
        return trace;
    }
}
