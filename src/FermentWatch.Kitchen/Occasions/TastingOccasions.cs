using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Words;

namespace FermentWatch.Kitchen.Occasions;

/// <summary>Probably sour enough; and tasted right or past it and still in the warm.</summary>
public static class TastingOccasions
{
    private const string Lid = "Solid lid, and into the cold";

    /// <summary>What holds in a facts: one jar speaks for its lot.</summary>
    public static IEnumerable<Occasion> Of(OccasionFacts facts) => facts.Fermenting.Select(jar => Of(facts, jar)).OfType<Occasion>();

    private static Occasion? Of(OccasionFacts facts, Jar jar)
    {
        if (facts.Tasting.Of(jar, facts.Today) is not { } ask)
            return null;
        if (jar.Standing.OfType<Taste>().LastOrDefault() is { } taste && taste.Verdict is TasteVerdict.Right or TasteVerdict.PastIt)
            return ask.SaidRight && facts.AfterMorning && facts.DateOf(taste.At) < facts.Today ? Tasted(facts, jar, taste) : null;
        if (ask.By != jar.Number || ask.From is not { } from)
            return null;
        // Past its days it is a decision, which the round asks for.
        return !facts.AfterMorning || from > facts.Today || ask.IsPast(facts.Today) ? null
            : On(OccasionKind.TargetReached, jar, ask, "expected", "Probably ready",
                "About as sour as you like it: expected, not tasted. If a taste says right, into the cold.");
    }

    private static Occasion Tasted(OccasionFacts facts, Jar jar, Taste taste)
    {
        string day = DateWords.When(facts.DateOf(taste.At), facts.Today);
        string cold = MeasureWords.Temperature(ColdCelsius, facts.Household.TemperatureUnit);
        if (taste.Verdict == TasteVerdict.PastIt)
            return On(OccasionKind.PastTarget, jar, $"taste {taste.Id:N}", "Past it, still in the warm",
                $"{taste.By} tasted it {day}; it goes on souring. {Lid} at {cold} or below today.");
        string early = TestedRecipe.IsKraut(jar)
            && facts.DayOf(jar) < StoreOccasions.EarlyBeforeDay ? " Public advice lets kraut work 3 to 6 weeks first." : "";
        return On(OccasionKind.TargetReached, jar, $"taste {taste.Id:N}", "Right, still in the warm",
            $"{taste.By} tasted it {day}; it goes on souring. {Lid} at {cold} or below.{early}");
    }

    private const double ColdCelsius = 4;

    private static Occasion On(OccasionKind kind, Jar jar, TasteAsk ask, string cause, string headline, string body) =>
        new(kind, jar.Id, cause, headline, ask.Lot, body) { JarName = jar.Name };

    private static Occasion On(OccasionKind kind, Jar jar, string cause, string headline, string body) =>
        new(kind, jar.Id, cause, headline, [jar.Number], body) { JarName = jar.Name };
}
