using FermentWatch.Kinetics.Ensemble;
using FermentWatch.Kinetics.Guilds;
using FermentWatch.Kinetics.Household;
using FermentWatch.Kinetics.Simulation;
using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Kinetics.Forecasting;

/// <summary>Turns a request into a forecast: prior members, moved to fit the readings, run through the span.</summary>
public static class Forecaster
{
    /// <summary>Names the equations, parameters and prior in force; the same as in every forecast made now.</summary>
    public static string ModelVersion => ModelIdentity.Version;

    /// <summary>Computes the forecast; about ten milliseconds without readings and some tens with them.</summary>
    /// <exception cref="ArgumentException">The request has refusals; ask <see cref="ForecastRequest.Check"/> first.</exception>
    public static Forecast Run(ForecastRequest request)
    {
        JarMembers jar = JarOf(request);
        var fit = new ReadingFit(jar, new Evidence(request.Readings, request.Titrations), request.Members);
        double[] deviates = MemberPrior.Standard.Draw(Philox.Key(request.Seed, ModelIdentity.Key), request.Members);
        fit.Run(deviates, MemberPrior.Standard, request.Seed);
        return Answer(request, jar, deviates, fit);
    }

    /// <summary>What a finished jar teaches of this kitchen's rate and this household's taste, under the published prior.</summary>
    /// <exception cref="ArgumentException">The request has refusals, or no sourness or acidity target to measure tastes on.</exception>
    public static JarLesson Learn(ForecastRequest request)
    {
        if (request.Target is null or { Kind: TargetKind.Ph })
            throw new ArgumentException("A sourness or acidity target that the tastes are measured on is needed.", nameof(request));
        double[] deviates = TastingMembers.Draw(request, JarOf(request), HouseholdPrior.Unknown);
        (double rate, double rateDeviation) = Spread(deviates, Deviate.Rate, new PriorSpread().LnRate);
        (double taste, double tasteDeviation) = Spread(deviates, Deviate.Taste, HouseholdPrior.TotalTaste);
        return new(rate, rateDeviation, taste, tasteDeviation);
    }

    private static JarMembers JarOf(ForecastRequest request)
    {
        IReadOnlyList<Refusal> refusals = request.Check();
        if (refusals.Count > 0)
            throw new ArgumentException(string.Join("; ", refusals), nameof(request));
        return new JarMembers(request.Recipe, request.Temperatures, LongestDays(request), ModelParameters.Current, new PriorSpread());
    }

    private static (double Mean, double Deviation) Spread(double[] deviates, int deviate, double unit)
    {
        int members = deviates.Length / Deviate.Count;
        double mean = Enumerable.Range(0, members).Average(m => deviates[(m * Deviate.Count) + deviate]);
        double variance = Enumerable.Range(0, members).Average(m => Math.Pow(deviates[(m * Deviate.Count) + deviate] - mean, 2));
        return (unit * mean, unit * Math.Sqrt(variance));
    }

    private static double LongestDays(ForecastRequest request) => new[] { request.Days }
        .Concat(request.Readings.Select(reading => reading.Day)).Concat(request.Titrations.Select(titration => titration.Day))
        .Concat(request.Tastes.Select(taste => taste.Day)).Concat(request.Gas.Select(gas => gas.Day)).Max();

    private static Forecast Answer(ForecastRequest request, JarMembers jar, double[] deviates, ReadingFit fit)
    {
        int members = request.Members;
        Passage Line(Watched watched, double level) => new(watched, level, members);
        Passage acidLine = Line(Watched.BrinePh, 4.6);
        Passage ph4 = Line(Watched.BrinePh, 4.0);
        Passage centreAcidLine = Line(Watched.CentrePh, 4.6);
        Passage centrePh4 = Line(Watched.CentrePh, 4.0);
        Passage? target = request.Target is { } wanted ? Line(WatchedOf(wanted.Kind), wanted.Level) : null;
        Passage[] passages = [acidLine, ph4, centreAcidLine, centrePh4];
        var trace = new Trace(members, OutputDays(request.Days, request.EveryDays), target is null ? passages : [.. passages, target]);
        var table = new LaneTable(members);
        jar.Run(deviates, table, trace);
        if (TastingMembers.AreAskedFor(request))
        {
            double[] tasting = TastingMembers.Draw(request, jar, request.Household ?? HouseholdPrior.Unknown);
            target = TastingMembers.Passage(request, tasting);
            jar.Run(tasting, table, new Trace(members, [request.Days], [target]));
        }
        double[] scratch = new double[members];
        return new Forecast
        {
            ModelVersion = ModelIdentity.Version,
            Course = [.. Enumerable.Range(0, trace.Days.Length).Select(time => Point(trace, time, jar.Climate, scratch))],
            AcidLine = QuantileOf.Days(acidLine.Days, scratch),
            Ph4 = QuantileOf.Days(ph4.Days, scratch),
            CentreAcidLine = QuantileOf.Days(centreAcidLine.Days, scratch),
            CentrePh4 = QuantileOf.Days(centrePh4.Days, scratch),
            Target = target is null ? null : QuantileOf.Days(target.Days, scratch),
            Household = request.Household,
            Flagged = fit.Flagged,
            Remarks = request.Temperatures.Remarks,
        };
    }

    private static Watched WatchedOf(TargetKind kind) => kind switch
    {
        TargetKind.Ph => Watched.BrinePh,
        TargetKind.AcidityPercentLactic => Watched.Acidity,
        _ => Watched.Sourness,
    };

    private static CoursePoint Point(Trace trace, int time, JarClimate climate, double[] scratch) => new(
        trace.Days[time],
        climate.At(24 * trace.Days[time]),
        QuantileOf.Values(trace.At(trace.Ph, time), scratch),
        QuantileOf.Values(trace.At(trace.Acidity, time), scratch),
        QuantileOf.Values(trace.At(trace.Sourness, time), scratch).P50,
        QuantileOf.Values(trace.At(trace.CentrePh, time), scratch));

    /// <summary>Day 0, each step, and the last day.</summary>
    private static double[] OutputDays(double days, double everyDays)
    {
        var output = new List<double> { 0 };
        for (int i = 1; i * everyDays < days - (0.25 * TemperatureCourse.StepDays); i++)
            output.Add(i * everyDays);
        output.Add(days);
        return [.. output];
    }
}
