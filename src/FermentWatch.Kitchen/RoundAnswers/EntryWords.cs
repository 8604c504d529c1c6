using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.ColdStore;
using FermentWatch.Kitchen.Guides;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Troubles;
using FermentWatch.Kitchen.Words;
using NodaTime;
using static FermentWatch.Kinetics.Sentence;

namespace FermentWatch.Kitchen.RoundAnswers;

/// <summary>What is answered to an entry: what was written down, and what it changed.</summary>
public static class EntryWords
{
    /// <summary>The answer to one entry of a jar, as things stand after it.</summary>
    /// <param name="jar">The jar, with the entry.</param>
    /// <param name="entry">What was entered.</param>
    /// <param name="zone">The household's zone, in which days are told apart.</param>
    /// <param name="tasting">What tasting comes to for it after the entry; null where it is no question.</param>
    /// <param name="today">The date, for what is said of days to come.</param>
    public static string Of(Jar jar, Observation entry, DateTimeZone zone, TasteAsk? tasting, LocalDate today)
    {
        string written = $"Written down for jar {jar.Number}: {ObservationWords.Of(entry)}.";
        return entry switch
        {
            PhMeasurement measurement => $"{written} {Line(jar, measurement, zone)}",
            Titration => $"{written} It moves the forecast; only a pH says anything of the acid line.",
            Taste { Verdict: TasteVerdict.NotYet or TasteVerdict.Nearly } => tasting?.From is { } again
                ? $"{written} Worth tasting again {DateWords.When(LocalDate.Max(again, today.PlusDays(1)), today)}." : written,
            Handling when Trouble.Of(jar, zone) is { Handled: not null, WellDaysToGo: var days and > 0 } =>
                $"{written} All well on {(days == 1 ? "one more day" : $"{days} more days")} settles it.",
            PortionTaken or JarOpened => $"{written} {Left(jar, zone)}",
            StageChange { Went: Destination.GivenAway } => $"{written} Its page prints a tag that goes with it.",
            StageChange { Went: Destination.Frozen } => $"{written} It stands under \"In the freezer\" of the cold store.",
            StageChange { Went: Destination.Canned } =>
                $"{written} Follow a tested procedure of your public guidance; there is none here. It stands among the past jars.",
            StageChange { Stage: JarStage.Cold } => $"{written} {Cautions.LoosenInTheCold.Text}",
            StageChange { Stage: JarStage.Finished or JarStage.ThrownOut } => $"{written} It stands among the past jars, and can be reopened there.",
            _ => written,
        };
    }

    /// <summary>What is left after it, and what to mind.</summary>
    private static string Left(Jar jar, DateTimeZone zone)
    {
        string left = LeftInJar.Words(jar) is { } words ? $"{Capital(words)}. " : "";
        return Trouble.Of(jar, zone).ForecastWithdrawn ? $"{left}Something was seen in this jar and is not settled: look at it before anybody eats."
            : LeftInJar.FractionOf(jar) < LeftInJar.EmptyFraction ? $"{left}If it is empty, say so on its page."
            : jar.Stage == JarStage.Cold ? $"{left}Press the rest under its brine, and back into the cold. It comes before the closed ones."
            : $"{left}Press the rest under its brine.";
    }

    private static string Line(Jar jar, PhMeasurement measurement, DateTimeZone zone)
    {
        var all = jar.Standing.OfType<PhMeasurement>().ToList();
        AcidLineReport before = AcidLine.Report(jar, all.Where(each => each.Id != measurement.Id), zone), after = AcidLine.Report(jar, zone);
        if (AcidLineWords.Sentence(after.Alarm) is { } alarm)
            return alarm;
        return AcidLine.Weigh(jar, measurement) switch
        {
            LineEvidence.CountsBelow when after.Settled && before.AwaitsBlended => "Below the line in the pieces too: settled.",
            LineEvidence.CountsBelow when after.Settled && !before.Settled => "That is the second below the line, on another day: settled.",
            LineEvidence.CountsBelow when after.Settled => "The line stays settled.",
            LineEvidence.CountsBelow => $"Below the line. {AcidLineWords.Settles(after)}",
            LineEvidence.CountsAbove => "That is above the line at 4.6: not acid enough yet. Measure again tomorrow.",
            var weight => AcidLineWords.WhyNot(weight)!,
        };
    }
}
