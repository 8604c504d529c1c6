using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Lines;
using FermentWatch.Kitchen.Troubles;
using NodaTime;

namespace FermentWatch.Kitchen.Words;

/// <summary>The one thing to do now with a jar, the most pressing first.</summary>
/// <param name="Text">What to do, in a sentence or two.</param>
/// <param name="InBrief">The same in a few words, for a list of jars.</param>
/// <param name="Urgent">Whether it asks for attention today.</param>
public sealed record NextStep(string Text, string InBrief, bool Urgent)
{
    private const int DayOfTheWeekRule = 7;
    private const string PublicAdvice = "Public advice: below 4.6 normally within a week, longer when cooler; discard what does not get there.";

    /// <summary>
    /// The step. On day 7 without a reading below the line the household is told so: public advice is below 4.6 normally within
    /// a week, longer when cooler, and to discard what does not get there (Univ. of Minnesota Extension 2021).
    /// </summary>
    /// <param name="jar">The jar.</param>
    /// <param name="trouble">What trouble means for it at present.</param>
    /// <param name="line">Where it stands against the acid line.</param>
    /// <param name="calendar">Counts its days.</param>
    /// <param name="tasteFrom">The first date worth tasting.</param>
    public static NextStep Of(Jar jar, TroubleState trouble, AcidLineReport line, ForecastCalendar calendar, LocalDate tasteFrom)
    {
        int dayNumber = calendar.DayNumber;
        if (AcidLineWords.Sentence(line.Alarm) is { } alarm)
            return new(alarm, "the pH has risen: look at it now", true);
        if (jar.Stage == JarStage.Cold)
            return new("In the cold. Eat the oldest jar first.", "in the cold", false);
        if (jar.Stage is JarStage.Finished or JarStage.ThrownOut)
            return new("This jar is finished. Nothing to do.", "finished", false);
        if (trouble is { ForecastWithdrawn: true, Last: { } seen })
            return new($"After {ObservationWords.Of(seen.Kind)} nothing is forecast until a pH is measured. Do what its guide says, then measure.",
                $"{ObservationWords.Of(seen.Kind)}: see its guide, measure the pH", true);
        if (dayNumber >= DayOfTheWeekRule && line.State != AcidLineState.MeasuredBelow)
            return WeekRule(line, calendar);
        if (line is { State: AcidLineState.MeasuredBelow, Settled: false })
            return new("Measure once more on another day: two readings settle the acid line.", "measure once more", false);
        if (calendar.Today >= tasteFrom)
            return new("Taste it today: not yet, nearly, right, or past it?", "taste it", false);
        return new("Look through the glass: brine over the vegetables, nothing afloat. No need to open.", "look through the glass", false);
    }

    private static NextStep WeekRule(AcidLineReport line, ForecastCalendar calendar)
    {
        int day = calendar.DayNumber;
        if (line.State == AcidLineState.NotMeasured)
            return new($"Day {day}, and no reading below 4.6 yet. Measure the pH today. {PublicAdvice}", $"day {day}, no reading below 4.6 yet: measure the pH today", true);
        string again = line.LastCounted!.At.InZone(calendar.Zone).Date == calendar.Today ? "tomorrow" : "today";
        return new($"Day {day}, and measured above 4.6. Measure again {again}. {PublicAdvice}", $"day {day}, measured above 4.6: measure again {again}", true);
    }
}
