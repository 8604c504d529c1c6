using FermentWatch.Kinetics.Ensemble;
using FermentWatch.Kinetics.Guilds;
using FermentWatch.Kinetics.Household;
using FermentWatch.Kinetics.Observation;

namespace FermentWatch.Kinetics.Forecasting;

/// <summary>Turns a request into a forecast: prior members, moved to fit the readings, run through the span.</summary>
public static class Forecaster
{
    /// <summary>Names the equations, parameters and prior in force; the same as in every forecast made now.</summary>
    public static string ModelVersion => ModelIdentity.Version;

    /// <summary>Computes the forecast; about ten milliseconds without readings and some tens with them.</summary>
    /// <exception cref="ArgumentException">The request has refusals; ask <see cref="ForecastRequest.Check"/> first.</exception>
    public static Forecast Run(ForecastRequest request) => Run(request, "", 0, null).Forecast;

    /// <summary>The same, going on from the forecast before where it can: the same bits for less work.</summary>
    /// <param name="request">The request.</param>
    /// <param name="facts">Names everything in the request but the temperatures and the length of the span.</param>
    /// <param name="knownDays">Up to when the temperatures are known, days after packing.</param>
    /// <param name="before">What was kept of the forecast before; null where nothing was.</param>
    /// <returns>The forecast, and what the next one may go on from; null of one with flagged readings, which is always made anew.</returns>
    /// <exception cref="ArgumentException">The request has refusals; ask <see cref="ForecastRequest.Check"/> first.</exception>
    public static (Forecast Forecast, KeptRun? Kept) Run(ForecastRequest request, string facts, double knownDays, KeptRun? before)
    {
        JarMembers jar = JarOf(request);
        KeptRun? kept = before?.IfOf(facts);
        IReadOnlyList<FlaggedReading> flagged = [];
        if (kept?.Lines.In(jar.Climate) is not { } deviates)
        {
            kept = null;
            deviates = MembersThatFit(request, jar, request.Readings, out ReadingFit fit);
            flagged = fit.Flagged;
        }
        var run = new MemberRun(request, jar, deviates, kept, knownDays);
        Forecast forecast = WidenedByFlagged(request, jar, Made(request, run, flagged));
        var lines = new KeptMembers(deviates, new Evidence(request.Readings, request.Titrations), run.Reached, jar.Climate);
        KeptMembers? tasting = null;
        if (TastingMembers.AreAskedFor(request))
            forecast = forecast with { Target = TastingMembers.Day(request, jar, kept?.Tasting, knownDays, out tasting) };
        return (forecast, flagged.Count > 0 ? null : new KeptRun(facts, lines, tasting, forecast.Course));
    }

    private static Forecast Made(ForecastRequest request, MemberRun run, IReadOnlyList<FlaggedReading> flagged) => new()
    {
        ModelVersion = ModelIdentity.Version,
        Course = run.Course,
        AcidLine = run.AcidLine,
        Ph4 = run.Ph4,
        CentreAcidLine = run.CentreAcidLine,
        CentrePh4 = run.CentrePh4,
        Target = run.Target,
        Household = request.Household,
        Flagged = flagged,
        Remarks = request.Temperatures.Remarks,
    };

    /// <summary>The gas that is expected, by the times of the course.</summary>
    /// <exception cref="ArgumentException">The request has refusals.</exception>
    public static IReadOnlyList<GasPoint> Gas(ForecastRequest request)
    {
        JarMembers jar = JarOf(request);
        return new MemberRun(request, jar, MembersThatFit(request, jar, request.Readings, out _)).Gas;
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

    private static double[] MembersThatFit(ForecastRequest request, JarMembers jar, IReadOnlyList<PhReading> readings, out ReadingFit fit)
    {
        double[] deviates = MemberPrior.Standard.Draw(Philox.Key(request.Seed, ModelIdentity.Key), request.Members);
        fit = new ReadingFit(jar, new Evidence(readings, request.Titrations), request.Members);
        fit.Run(deviates, MemberPrior.Standard, request.Seed);
        return deviates;
    }

    /// <summary>Two answers more at most: without the flagged readings that are worse news, and without those that are better.</summary>
    private static Forecast WidenedByFlagged(ForecastRequest request, JarMembers jar, Forecast forecast)
    {
        foreach (IGrouping<bool, FlaggedReading> kind in forecast.Flagged.GroupBy(flagged => flagged.WorseThanExpected).OrderBy(kind => kind.Key))
        {
            PhReading[] others = [.. request.Readings.Except(kind.Select(flagged => flagged.Reading))];
            forecast = Widened.By(forecast, new MemberRun(request, jar, MembersThatFit(request, jar, others, out _)));
        }
        return forecast;
    }
}
