using FermentWatch.Kinetics.Ensemble;
using FermentWatch.Kinetics.Household;
using FermentWatch.Kinetics.Simulation;

namespace FermentWatch.Kinetics.Forecasting;

/// <summary>
/// The second ensemble of a jar, for its tasting day alone: household learning, tastes and gas speak here and nowhere else, so
/// that they can move no line.
/// </summary>
internal static class TastingMembers
{
    /// <summary>Whether anything was given that only the tasting day may hear of.</summary>
    public static bool AreAskedFor(ForecastRequest request) =>
        request.Target is { Kind: not TargetKind.Ph } && (request.Tastes.Count > 0 || request.Gas.Count > 0 || request.Household is not null);

    /// <summary>All that was seen.</summary>
    public static Evidence EvidenceOf(ForecastRequest request) =>
        new(request.Readings, request.Titrations, request.Tastes, request.Gas, new TasteScale(request.Target));

    /// <summary>Members that fit all that was seen under a household's prior.</summary>
    public static double[] Draw(ForecastRequest request, JarMembers jar, HouseholdPrior household)
    {
        MemberPrior prior = PriorOf(household);
        double[] deviates = prior.Draw(Philox.Key(request.Seed, ModelIdentity.Key, 2), request.Members);
        new ReadingFit(jar, EvidenceOf(request), request.Members).Run(deviates, prior, Philox.Key(request.Seed, 2));
        return deviates;
    }

    /// <summary>The target's day: at each member's own level, or at the level itself where nobody's taste is known.</summary>
    /// <param name="request">What is asked for.</param>
    /// <param name="jar">The jar.</param>
    /// <param name="before">Members of the forecast before, of the same facts; null where none are kept.</param>
    /// <param name="knownDays">Up to when temperatures are known, days after packing.</param>
    /// <param name="now">Members for the next forecast.</param>
    public static PassageDays Day(ForecastRequest request, JarMembers jar, KeptMembers? before, double knownDays, out KeptMembers? now)
    {
        double[]? fitted = before?.In(jar.Climate);
        double[] deviates = fitted ?? Draw(request, jar, request.Household ?? HouseholdPrior.Unknown);
        Checkpoint? from = fitted is null ? null : before!.ReachedIn(jar.Climate);
        Passage passage = Passage(request.Target!, deviates, toTheLetter: request.Household is null && request.Tastes.Count == 0);
        var table = new LaneTable(request.Members);
        var trace = new Trace(request.Members, [request.Days], [passage]);
        Checkpoint? keep = Checkpoint.AtLastStep(24 * Math.Min(knownDays, request.Days), table, trace, from);
        jar.Run(deviates, table, trace, from: from, keep: keep == from ? null : keep);
        now = new KeptMembers(deviates, EvidenceOf(request), keep, jar.Climate);
        return QuantileOf.Days(passage.Days, new double[request.Members]);
    }

    /// <summary>The passage of a target.</summary>
    internal static Passage Passage(ForecastTarget target, double[] deviates, bool toTheLetter = false)
    {
        var scale = new TasteScale(target);
        int members = deviates.Length / Deviate.Count;
        return new(scale.Watched, [.. Enumerable.Range(0, members).Select(m =>
            scale.LevelOf(toTheLetter ? 0 : deviates[(m * Deviate.Count) + Deviate.Taste]))]);
    }

    private static MemberPrior PriorOf(HouseholdPrior household)
    {
        double lnRate = new PriorSpread().LnRate;
        double[] mean = [.. MemberPrior.Standard.Mean];
        double[] deviation = [.. MemberPrior.Standard.StandardDeviation];
        mean[Deviate.Rate] = household.LnRateMean / lnRate;
        deviation[Deviate.Rate] = household.LnRateDeviation / lnRate;
        mean[Deviate.Taste] = household.LnTasteMean / HouseholdPrior.TotalTaste;
        deviation[Deviate.Taste] = household.LnTasteDeviation / HouseholdPrior.TotalTaste;
        return new(mean, deviation);
    }
}
