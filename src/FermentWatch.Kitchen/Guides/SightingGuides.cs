using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Observations;

namespace FermentWatch.Kitchen.Guides;

/// <summary>
/// The guides to what people see. The stricter advice stands where sources disagree, with each source beside it.
/// </summary>
public static class SightingGuides
{
    private const string CommonPractice = "common practice, no source";
    private const string NeverTaste = "Do not taste it to decide. When in doubt, throw it out; local food-safety guidance comes first.";

    /// <summary>One guide for each kind of sighting.</summary>
    public static readonly IReadOnlyList<SightingGuide> All =
    [
        new(SightingKind.PiecesUp, "pieces up",
            ["Take out what floated or dried and throw those pieces away.", "Press the rest under, with clean hands, a leaf and a weight.",
                "Write down \"pressed under\": two days of all well after it, or a pH, bring the forecast back."],
            "Throw the jar out if what was up had fuzz, colour or slime.", NeverTaste,
            ["1 to 2 inches of brine above the solids: NDSU; Michigan State", CommonPractice]),
        new(SightingKind.Film, "flat white film",
            ["Skim it off with a clean spoon and wipe the rim.", "Add weight so that everything stays under brine.",
                "Skim daily. Write down \"skimmed\": two days of all well after it, or a pH, bring the forecast back."],
            "If you cannot tell film from mould, treat it as mould. Throw it out if the pH rises again.", NeverTaste,
            ["not enough weight: skim it: Oregon State SP 50-745", "remove scum daily: Univ. of Minnesota",
                "film yeasts eat acid: secondary cucumber fermentation, 2012 (Appl. Environ. Microbiol.)"]),
        new(SightingKind.FuzzOrUnsure, "fuzz, colour, or cannot tell",
            ["Do not taste it and do not stir it under.", "Throw the jar out: that is the stricter advice and this household's default.",
                "Wash the vessel and the weight in hot soapy water."],
            "Always by the stricter advice.", NeverTaste,
            ["see mould: do not taste: NDSU", "small patches may be skimmed, a lot: discard: Oregon State SP 50-745",
                "green or grey skim; black, pink, orange discard: Ask Extension"]),
        new(SightingKind.BrineLow, "brine low",
            ["Press the vegetables down first: brine often comes back overnight.", $"Top up with {TopUpBrine.Published}, never plain.",
                "Write the top-up down: two days of all well after it, or a pH, bring the forecast back."],
            "Throw it out if what was dry has fuzz, colour or slime.",
                "Plain water thins the salt; a saltier jar takes brine as salty as itself. " + NeverTaste,
            ["top-up brine: USDA Complete Guide to Home Canning, Guide 6; NDSU"]),
        new(SightingKind.Gas, "gas or brine pushed out",
            ["Open a tight lid slowly, over the sink, and let the gas out.", "Put a tray under the jar and wipe the rim.",
                "This is normal while it bubbles; do it daily with a tight lid."],
            "No reason to throw it out.", "Glass can burst under pressure: never leave a tight lid unattended for days.", [CommonPractice]),
        new(SightingKind.OffSmell, "off smell",
            ["Close it and set it apart from the other jars.", "Sour and cabbage-like is normal; rotten, cheesy or putrid is not.",
                "If it is not clean and acid, throw it out; if you keep it, measure the pH."],
            "Throw it out if the smell is rotten, or you cannot say what it is.", NeverTaste, [CommonPractice]),
        new(SightingKind.Slime, "slimy",
            ["Do not taste it.", "Throw the jar out: slimy is spoiled.", "Next time more salt and a cooler place."],
            "Always.", NeverTaste, ["spoiled: discard (too warm or too little salt): Oregon State SP 50-745"]),
        new(SightingKind.Other, "something else",
            ["Write down what you saw, with a photo if you can.", "Keep the jar apart and look again tomorrow.",
                "Ask your local food-safety service if you are unsure."],
            "When in doubt, throw it out.", NeverTaste, [CommonPractice]),
    ];

    /// <summary>Mould as a household treats it that skims small patches.</summary>
    private static readonly SightingGuide SkimmedMould = new(SightingKind.FuzzOrUnsure, "fuzz, colour, or cannot tell",
        ["Do not taste it. If you cannot tell what it is, or there is much of it, throw the jar out.",
            "Only a small green or grey patch on top: lift it off whole with what it sits on, wipe the rim, and press everything under.",
            "Measure the pH today and look daily: the forecast waits for it."],
        "Much of it; black, pink or orange; back again after skimming; or the pH rises.", NeverTaste, Mould.Sources);

    /// <summary>The guide to a sighting, by the stricter advice.</summary>
    public static SightingGuide Of(SightingKind kind) => All.First(guide => guide.Kind == kind);

    /// <summary>The guide to a sighting in a household with this policy.</summary>
    public static SightingGuide Of(SightingKind kind, MouldPolicy policy) =>
        kind == SightingKind.FuzzOrUnsure && policy == MouldPolicy.SkimSmallPatches ? SkimmedMould : Of(kind);

    /// <summary>Every guide in a household with this policy.</summary>
    public static IEnumerable<SightingGuide> For(MouldPolicy policy) => All.Select(guide => Of(guide.Kind, policy));

    private static SightingGuide Mould => Of(SightingKind.FuzzOrUnsure);

    /// <summary>What looks odd and is normal. Common practice, no source.</summary>
    public static readonly IReadOnlyList<string> Normal =
    [
        "cloudy brine", "fizz and bubbles", "white sediment at the bottom", "a smell of cabbage and sour", "a duller colour",
        "blue or green garlic", "brine that sinks back overnight",
    ];
}

/// <summary>What to do about a sighting.</summary>
/// <param name="Kind">The sighting.</param>
/// <param name="Name">What people call it, in a few words.</param>
/// <param name="Now">What to do now, in three lines.</param>
/// <param name="Discard">When to throw it out.</param>
/// <param name="Caution">The caution that goes with it.</param>
/// <param name="Sources">Who says what; where they disagree, each of them.</param>
public sealed record SightingGuide(
    SightingKind Kind, string Name, IReadOnlyList<string> Now, string Discard, string Caution, IReadOnlyList<string> Sources);
