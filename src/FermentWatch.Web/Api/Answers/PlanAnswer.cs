using FermentWatch.Acts.Planning;
using FermentWatch.Kitchen.Planning;
using NodaTime;

namespace FermentWatch.Web.Api.Answers;

/// <summary>What to put up when, and how far it lasts.</summary>
/// <param name="Words">All of it in a sentence.</param>
/// <param name="IsMet">Whether it lasts in nine winters of ten.</param>
/// <param name="LastsPercentOfWinters">Per cent of a thousand drawn winters in which nothing runs out before the last day.</param>
/// <param name="OneInTenOutOn">One winter in ten is out of it by then; null where it is later than three months after the last day.</param>
/// <param name="VesselCount">Vessels that are filled in all.</param>
/// <param name="MostVesselsAtOnceCount">Vessels in use on the fullest day.</param>
/// <param name="VegetablesPreparedKilograms">Vegetables as they go in.</param>
/// <param name="VegetablesBoughtKilograms">The same as bought.</param>
/// <param name="SaltGrams">Salt.</param>
/// <param name="Starts">The starts, by date.</param>
/// <param name="Store">The store on some days.</param>
/// <param name="FallsShort">What falls short; empty where it lasts.</param>
/// <param name="Nearest">The nearest plans that can be met, in words.</param>
/// <param name="Warnings">What is to be minded.</param>
/// <param name="Asked">What was asked, with what was taken where nothing was said.</param>
public sealed record PlanAnswer(string Words, bool IsMet, double LastsPercentOfWinters, LocalDate? OneInTenOutOn, int VesselCount,
    int MostVesselsAtOnceCount, double VegetablesPreparedKilograms, double VegetablesBoughtKilograms, double SaltGrams,
    IReadOnlyList<PlannedStartAnswer> Starts, IReadOnlyList<StoreLevelAnswer> Store, IReadOnlyList<string> FallsShort, IReadOnlyList<string> Nearest,
    IReadOnlyList<string> Warnings, IReadOnlyDictionary<string, string> Asked)
{
    /// <summary>The answer to a question that was read.</summary>
    public static PlanAnswer Of(PlanReply reply)
    {
        Plan plan = reply.Plan!;
        var words = new PlanWords(plan, reply.Household);
        return new PlanAnswer(words.Headline, plan.IsMet, Math.Round(100 * plan.Spread.LastShare, 1), plan.Spread.OneInTenOutOn, plan.Vessels,
            plan.MostVesselsAtOnce, plan.Shopping.PreparedKilograms, plan.Shopping.BoughtKilograms(plan.Question.Vegetable), plan.Shopping.SaltGrams,
            [.. plan.Starts.Select(start => PlannedStartAnswer.Of(start, plan.Question.Place))], [.. plan.Spread.Levels.Select(StoreLevelAnswer.Of)],
            [.. words.FallsShort()], [.. plan.Nearest.Select(words.Nearest)], [.. words.Warnings()],
            PlanForm.Fields.ToDictionary(field => field.Name, field => reply.Form[field]));
    }
}

/// <summary>One start.</summary>
/// <param name="Date">The day.</param>
/// <param name="Place">Where it works.</param>
/// <param name="ExpectedCelsius">What is expected there.</param>
/// <param name="Vessels">How many of which size.</param>
/// <param name="VegetablesPreparedKilograms">Vegetables as they go in.</param>
/// <param name="SaltGrams">Salt.</param>
/// <param name="TasteFrom">One in ten is sour enough by then.</param>
/// <param name="Likely">Half are.</param>
/// <param name="Late">Nine in ten are.</param>
/// <param name="IntoTheColdBy">The same, or the day of coming back after it.</param>
/// <param name="IsSoonAlone">Whether the household leaves within five days of it.</param>
public sealed record PlannedStartAnswer(LocalDate Date, string Place, double ExpectedCelsius, IReadOnlyList<VesselsAnswer> Vessels,
    double VegetablesPreparedKilograms, double SaltGrams, LocalDate TasteFrom, LocalDate Likely, LocalDate Late, LocalDate IntoTheColdBy,
    bool IsSoonAlone)
{
    public static PlannedStartAnswer Of(PlannedStart start, string place) => new(start.Date, place, start.Celsius,
        [.. start.Filled.Select(each => new VesselsAnswer(each.Count ?? 0, each.Litres))], start.Shopping.PreparedKilograms, start.Shopping.SaltGrams,
        start.TasteFrom, start.Likely, start.Late, start.IntoTheColdBy, start.IsSoonAlone);
}

/// <summary>Vessels of one size.</summary>
/// <param name="Count">How many.</param>
/// <param name="Litres">The size.</param>
public sealed record VesselsAnswer(int Count, double Litres);

/// <summary>Servings that are ready on a day.</summary>
/// <param name="Date">The day.</param>
/// <param name="ServingCountP10">One winter in ten has fewer.</param>
/// <param name="ServingCountP50">Half have fewer.</param>
/// <param name="ServingCountP90">Nine in ten have fewer.</param>
public sealed record StoreLevelAnswer(LocalDate Date, double ServingCountP10, double ServingCountP50, double ServingCountP90)
{
    public static StoreLevelAnswer Of(StoreLevel level) =>
        new(level.Date, Math.Round(level.Low, 1), Math.Round(level.Middle, 1), Math.Round(level.High, 1));
}
