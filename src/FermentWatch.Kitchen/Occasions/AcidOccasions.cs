using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Rounds;
using NodaTime;

namespace FermentWatch.Kitchen.Occasions;

/// <summary>What the acid line asks for. No forecast moves any of it: only days and measurements count.</summary>
public static class AcidOccasions
{
    private const int FirstAskedDay = 5;
    private const string HowToMeasure = "A meter checked in buffer, or a strip in pale brine; in a cup that is thrown away.";
    private const string Discard = "Public advice is to discard a ferment whose pH rises again. Do not taste it to decide.";

    /// <summary>What holds in a facts.</summary>
    public static IEnumerable<Occasion> Of(OccasionFacts facts)
    {
        if (!facts.Household.Measures && facts.AfterMorning && facts.Fermenting.Any(jar => facts.DayOf(jar) >= FirstAskedDay))
            yield return new Occasion(OccasionKind.NotMeasuredHere, facts.Household.Id, "once", "Acid line: not measured here", [],
                "Neither fine nor a reason to discard. A packet of strips would tell: 4.0 or less in pale brine is below the line at 4.6.");
        foreach (Jar jar in facts.Fermenting.Concat(facts.Jars.Where(jar => jar.Stage == JarStage.Cold)))
        {
            var measured = jar.Standing.OfType<PhMeasurement>().OrderBy(each => each.At).ThenBy(each => each.Ph).ToList();
            AcidLineReport line = AcidLine.Report(jar, facts.Zone);
            if (line.Alarm != AcidLineAlarm.None)
                yield return Rising(jar, line.Alarm, Began(jar, measured, line.Alarm, facts.Zone));
            if (jar.Stage == JarStage.Cold || line.Alarm != AcidLineAlarm.None)
                continue;
            if (facts.AfterEvening && Passed(jar, measured, line) is { } passed)
                yield return passed;
            if (!facts.Household.Measures)
                continue;
            if (facts.AfterEvening && ByDay(facts, jar, line) is { } byDay)
                yield return byDay;
            if (facts.AfterEvening && Due(facts, jar, line) is { } due)
                yield return due;
        }
    }

    /// <summary>Told in the evening, so that an hour of measuring jars is one message.</summary>
    private static Occasion? Passed(Jar jar, List<PhMeasurement> measured, AcidLineReport line) => line.State != AcidLineState.MeasuredBelow ? null
        : On(OccasionKind.PassedAcidLine, jar, $"{measured.First(each => AcidLine.Weigh(jar, each) == LineEvidence.CountsBelow).Id:N}",
            "Passed the acid line, measured",
            $"{AcidLineWords.Covers} {AcidLineWords.Settles(line)}".TrimEnd());

    /// <summary>
    /// The same words for every jar whose day it is, so that they are one message; in the evening, since the morning round has
    /// asked and a reading of the day answers it.
    /// </summary>
    private static Occasion? ByDay(OccasionFacts facts, Jar jar, AcidLineReport line)
    {
        int day = facts.DayOf(jar);
        if (line.State == AcidLineState.MeasuredBelow || day < FirstAskedDay)
            return null;
        bool above = line.State == AcidLineState.MeasuredAbove, today = MeasuredToday(facts, jar);
        if (day < LineRule.WeekRuleDay)
            return today ? null : On(OccasionKind.NoReadingByDay5, jar, "day 5", "Day 5, no reading below 4.6",
                $"{(above ? "Last measured above" : "Nothing counted yet")}. Measure the pH today. {HowToMeasure}");
        return On(OccasionKind.NoReadingByDay7, jar, "day 7", "A week, no reading below 4.6",
            $"{(above ? "Last measured above." : "Nothing counted yet: neither fine nor a reason to discard.")}{(today ? "" : " Measure today.")} "
            + "Public advice: normally below within a week, longer when cooler; discard what does not get there.");
    }

    /// <summary>Not measured on the day it was due; days 5 and 7 of a jar never measured have a kind of their own.</summary>
    private static Occasion? Due(OccasionFacts facts, Jar jar, AcidLineReport line)
    {
        int day = facts.DayOf(jar);
        if (MeasuredToday(facts, jar) || day == FirstAskedDay || day == LineRule.WeekRuleDay || !PhDue.On(facts.Today, day, line, facts.Zone))
            return null;
        string cause = line.LastCounted is { } last ? $"since {last.Id:N}" : $"day {day}";
        return On(OccasionKind.PhDue, jar, cause, "pH not measured today",
            $"Public advice: daily until below 4.6, then weekly. {HowToMeasure}");
    }

    private static bool MeasuredToday(OccasionFacts facts, Jar jar) =>
        jar.Standing.OfType<PhMeasurement>().Any(each => facts.DateOf(each.At) == facts.Today);

    private static Occasion Rising(Jar jar, AcidLineAlarm alarm, PhMeasurement began)
    {
        (string headline, string body) = alarm switch
        {
            AcidLineAlarm.RiseToRecheck => ("pH higher than before",
                "More than 0.2 above an earlier reading by the same method. Check the meter in buffer and measure again today. Do not taste it to "
                + "decide."),
            AcidLineAlarm.Rise => ("pH rising", $"Seen twice: film yeasts and other organisms eat acid. {Discard}"),
            _ => ("pH back above 4.6", $"It was below before. {Discard}"),
        };
        return On(OccasionKind.PhRising, jar, $"{alarm} {began.Id:N}", headline, body);
    }

    /// <summary>The reading with which the alarm that stands began: a further one of the same kind is the same cause.</summary>
    private static PhMeasurement Began(Jar jar, List<PhMeasurement> measured, AcidLineAlarm alarm, DateTimeZone zone)
    {
        int first = measured.Count;
        while (first > 1 && AcidLine.Report(jar, measured.Take(first - 1), zone).Alarm == alarm)
            first--;
        return measured[first - 1];
    }

    private static Occasion On(OccasionKind kind, Jar jar, string cause, string headline, string body) =>
        new(kind, jar.Id, cause, headline, [jar.Number], body) { JarName = jar.Name };
}
