using FermentWatch.Kitchen.Guides;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Troubles;
using FermentWatch.Kitchen.Words;

namespace FermentWatch.Kitchen.Occasions;

/// <summary>Trouble that was seen: what it is and what to do first. What a child or a guest saw asks an adult.</summary>
public static class TroubleOccasions
{
    /// <summary>What holds in a facts.</summary>
    public static IEnumerable<Occasion> Of(OccasionFacts facts)
    {
        foreach (Jar jar in facts.Fermenting)
            if (Trouble.Of(jar, facts.Zone) is { CloserWatch: true, Last: { } seen, Handled: null })
                yield return On(facts, jar, seen);
    }

    private static Occasion On(OccasionFacts facts, Jar jar, Sighting seen)
    {
        bool adult = (seen.SeenAs ?? facts.Roster.Of(seen.By).Role) == MemberRole.Adult;
        (OccasionKind kind, string headline) = !adult ? (OccasionKind.AdultAsked, "An adult is asked")
            : seen.Kind == SightingKind.BrineLow ? (OccasionKind.BrineLow, "Brine low") : (OccasionKind.CloserWatch, "Watch closely");
        return new Occasion(kind, jar.Id, $"{seen.Id:N}", headline, [jar.Number],
            $"{seen.By} {Saw(seen.Kind)}. {ToDo(jar, seen.Kind, facts.Household)}")
        {
            KnownTo = adult ? seen.By : null, JarName = jar.Name,
        };
    }

    private static string Saw(SightingKind kind) => kind switch
    {
        SightingKind.BrineLow => "saw low brine",
        SightingKind.FuzzOrUnsure => "saw fuzz or colour, or could not tell",
        SightingKind.OffSmell => "noticed an off smell",
        _ => $"saw {ObservationWords.Of(kind)}",
    };

    private static string ToDo(Jar jar, SightingKind kind, Household household) => kind switch
    {
        SightingKind.BrineLow =>
            "Press the vegetables under first. If that is not enough, top up with boiled and cooled water with "
            + $"{TopUpBrine.Words(jar, household.MassUnit)}, never plain.",
        SightingKind.FuzzOrUnsure when household.Mould == MouldPolicy.SkimSmallPatches =>
            "Do not taste it. Much of it, or cannot tell: throw the jar out. A small green or grey patch: its guide says how.",
        SightingKind.FuzzOrUnsure => "Do not taste or stir it. Throw the jar out: that is the stricter advice.",
        SightingKind.Other => "Read what was written, look at it, and keep it apart. When in doubt, throw it out.",
        _ => string.Join(' ', SightingGuides.Of(kind).Now.Take(2)),
    };
}
