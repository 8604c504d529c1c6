using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.ColdStore;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Kitchen.Occasions;

/// <summary>The cold store: chilled early, and to be eaten first.</summary>
public static class StoreOccasions
{
    /// <summary>Public advice lets kraut work 3 to 6 weeks (USDA Complete Guide to Home Canning, Guide 6, AIB 539, 2015).</summary>
    public const int EarlyBeforeDay = 21;

    /// <summary>A chilling entered later than this after it happened is no longer worth a word.</summary>
    private const int EarlyToldWithinDays = 3;

    private const string OfKimchi =
        "No reading below 4.6 counts. Published for kimchi: 1 to 2 days in the room or 3 to 4 in the refrigerator, and pH 4.6 or below before it is "
        + "eaten. Measure it.";

    /// <summary>What holds in a facts.</summary>
    public static IEnumerable<Occasion> Of(OccasionFacts facts)
    {
        foreach (Jar jar in facts.Jars.Where(jar => jar.Stage == JarStage.Cold))
        {
            StageChange chilled = jar.Standing.OfType<StageChange>().Last();
            LocalDate on = facts.DateOf(chilled.At);
            int age = Period.DaysBetween(facts.DateOf(jar.PackedAt), on), kept = Period.DaysBetween(on, facts.Today);
            if (age < EarlyBeforeDay && kept <= EarlyToldWithinDays && Early(facts, jar) is { } early)
                yield return On(OccasionKind.EarlyChilling, jar, chilled, $"Into the cold on day {age}", early);
            if (facts.AfterMorning && kept >= KeepingTime.Of(jar).Days)
                yield return EatFirst(facts, jar, chilled, on);
        }
    }

    /// <summary>What early chilling means for a jar; null where it is what is published for it.</summary>
    private static string? Early(OccasionFacts facts, Jar jar)
    {
        bool below = AcidLine.Report(jar, facts.Zone).State == AcidLineState.MeasuredBelow;
        if (TestedRecipe.IsKimchi(jar))
            return below ? null : OfKimchi;
        string advice = TestedRecipe.IsKraut(jar) ? "public advice lets kraut work 3 to 6 weeks."
            : $"no tested recipe for {TestedRecipe.Main(jar)} is known here.";
        return below
            ? $"Measured below 4.6, yet cold slows the dying of germs; {advice} Leave it out longer if you like."
            : $"No reading below 4.6 counts. Cold slows the souring and the dying of germs; {advice} Measure it, or take it out again.";
    }

    private static Occasion EatFirst(OccasionFacts facts, Jar jar, StageChange chilled, LocalDate on) =>
        On(OccasionKind.EatFirst, jar, chilled, "Eat first",
        $"In the cold since {DateWords.Dated(on, facts.Today)}. "
        + KeepingTime.Of(jar).Words + " Look before you serve it; when in doubt, throw it out.");

    private static Occasion On(OccasionKind kind, Jar jar, StageChange chilled, string headline, string body) =>
        new(kind, jar.Id, $"{chilled.Id:N}", headline, [jar.Number], body) { JarName = jar.Name };
}
