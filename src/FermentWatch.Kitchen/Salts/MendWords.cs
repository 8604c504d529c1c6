using System.Globalization;
using FermentWatch.Kinetics.Salt;
using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Guides;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Kitchen.Salts;

/// <summary>What a jar that was salted wrongly needs, in words for a household.</summary>
/// <param name="mend">What was worked out.</param>
/// <param name="household">For units and clock.</param>
/// <param name="now">The present.</param>
public sealed class MendWords(SaltMend mend, Household household, Instant now)
{
    /// <summary>Said under every answer.</summary>
    public const string SaysNothingElse = "This is arithmetic of salt. It says nothing of what has grown in the jar: the acid line, looks and "
        + "your local "
        + "food-safety guidance go on as before.";

    private const string CommonPractice = "Common practice, no source.";

    /// <summary>The one thing to do now.</summary>
    public string Headline => mend switch
    {
        { Lateness: SaltLateness.ThrowOut } => "Throw it out: it stood for more than a day with next to no salt.",
        { NowPercent: null } => $"Wait until {ClockWords.WithDate(mend.EvenAt, household)}, then taste again.",
        { IsWithin: true } => "Nothing need be done.",
        { Adding: { } adding } => $"Add {Salt(adding.SaltGrams)}.",
        { Taking: { Times: not null } taking } => $"Pour off {Mass(taking.BrineOutGrams)} of its brine, put in {Mass(taking.WaterInGrams)} of water"
            + (taking.Times > 1 ? $", {taking.Times} times." : "."),
        { Taking: { } taking } => $"Mix in {Mass(taking.VegetablesGrams)} of unsalted vegetables.",
        _ => "Nothing need be done.",
    };

    /// <summary>What is in it and what it should be.</summary>
    public string Standing => mend.NowPercent is { } percent
        ? $"{Percent(percent)} of salt went in, of vegetables and added water together; {Percent(mend.WantedPercent)} is wanted. {Within}"
        : $"How much went in is not known; {Percent(mend.WantedPercent)} is wanted. {Within}";

    private string Within => $"Between {Percent(mend.Range.LowestPercent)} and {Percent(mend.Range.HighestPercent)} nothing need be done "
        + $"({mend.Range.Source}).";

    /// <summary>How it is done, step by step; empty where nothing is.</summary>
    public IEnumerable<string> Steps()
    {
        if (mend.Adding is { } adding)
            return
            [
                $"Draw off a cup of its brine, dissolve {Salt(adding.SaltGrams)} in it, and pour it back over the top.",
                $"Or, where there is no brine to draw off: dissolve {Salt(adding.BrineSaltGrams)} in {Mass(adding.BrineWaterGrams)} of boiled "
                    + "and cooled "
                + $"water, a brine of {SaltToAdd.BrinePercent:0} %, and pour it on. Its water is counted."
                + (adding.BrineFits ? "" : " With it there is more than goes into the vessel: rather dissolve the salt in its own brine, or use a "
                + "larger vessel."),
                $"It is even again about {Even} after that: until then the bottom has less salt than the top. Turn a jar that has just been "
                    + "packed over "
                + "once, lid on, or stir it.",
            ];
        return mend.Taking is { } taking ? TakingSteps(taking) : [];
    }

    private IEnumerable<string> TakingSteps(SaltToTake taking)
    {
        if (mend.EvenAt > now)
            yield return $"Wait until {ClockWords.WithDate(mend.EvenAt, household)}: until then more of the salt is in the brine than will be, and "
                + "too much would go with it.";
        if (taking.Times is { } times)
            yield return $"Pour off {Mass(taking.BrineOutGrams)} of brine and put in {Mass(taking.WaterInGrams)} of boiled and cooled water, weighed"
                + (times > 1 ? $"; {times} times, each {Even} after the one before." : ".");
        yield return $"{(taking.Times is null ? "Mix in" : "Or mix in")} {Mass(taking.VegetablesGrams)} of unsalted vegetables "
            + "of the same kind and cut"
            + (taking.VegetablesFit ? "." : ": they need a larger vessel, or a second one, filled from both.");
        yield return $"It is even again about {Even} after that. Nothing that was thinned goes below {Percent(mend.Range.LowestPercent)} by "
            + "these amounts; "
            + "more water than that does.";
    }

    /// <summary>What it means where it is late or salty, each with who says so.</summary>
    public IEnumerable<string> Meaning()
    {
        if (mend.Lateness == SaltLateness.ThrowOut)
            yield return "Cut vegetables without salt for more than a day at room temperature: what has grown by then, salt that is added now "
                + "does not take "
                + $"away, and tasting tells nothing. {CommonPractice}";
        if (mend.Lateness == SaltLateness.Late)
            yield return $"It is late: too little salt for more than a day. {LineRule.PublicAdvice} (Univ. of Minnesota Extension 2021.) "
                + "Measure it from day 3 on; "
                + "slimy or an off smell: throw it out (Oregon State SP 50-745).";
        if (mend.Lateness == SaltLateness.LateInTheCold)
            yield return $"Too little salt for more than a day, in the cold. How long that may be nobody has published: when in doubt, throw it "
                + $"out. {CommonPractice}";
        if (mend.NowPercent is null)
            yield return "Until salt has evened out the brine is saltier than the jar will be. Weigh the salt tub, if it is known what it "
                + "weighed before, and "
                + $"ask again with that. {CommonPractice}";
        if (mend.NowPercent > Kinetics.Recipe.SaltDose.HighestPercent)
            yield return "Above 8 % the lactic acid bacteria hardly work: nothing sours until it is thinned.";
        if (mend.NowPercent < mend.Range.LowestPercent && mend.Lateness == SaltLateness.InTime)
            yield return "With too little salt it goes soft, at 1.7 % or less for kraut (Univ. of Minnesota Extension; Oregon State SP 50-745), "
                + "and below 1.5 % the "
                + "wrong germs may keep up: the sooner it is added the better.";
        if (mend.Taking is not null)
            yield return "Brine that is poured off takes acid along, and fresh vegetables begin anew: a pH measured before says nothing of the "
                + "jar any "
                + $"more. Measure it again once it is even, and count its days from then on. {CommonPractice}";
    }

    /// <summary>Where nobody knows how much went in: what would be done for so many per cent.</summary>
    public IEnumerable<(string Percent, string What)> IfItWere() => mend.IfItWere.Select(each => (Percent(each.Percent),
        each.Taking.Times is { } times
            ? $"{Mass(each.Taking.BrineOutGrams)} of brine out, {Mass(each.Taking.WaterInGrams)} of water in{(times > 1 ? $", {times} times" : "")}"
            : $"{Mass(each.Taking.VegetablesGrams)} of unsalted vegetables in"));

    private string Even => mend.HoursUntilEven < 36
        ? string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(mend.HoursUntilEven):0} hours")
        : string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(mend.HoursUntilEven / 24):0} days");

    private string Mass(double grams) => MeasureWords.Mass(grams / 1000, household.MassUnit);

    private static string Salt(double grams) => new PuttingUp.SaltToWeigh(grams, 0).Words;

    private static string Percent(double percent) => string.Create(CultureInfo.InvariantCulture, $"{percent:0.##} %");

    /// <summary>What is shown beside it.</summary>
    public static IReadOnlyList<Caution> CautionsBeside { get; } =
        [Cautions.LocalGuidanceFirst, Cautions.NeverTasteToDecide, Cautions.NoPlainWater, Cautions.SaltRestricted, Cautions.CleanHands];
}
