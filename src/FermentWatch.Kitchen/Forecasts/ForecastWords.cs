using System.Globalization;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Kitchen.Forecasts;

/// <summary>What a forecast says, in words: the day, how sure, and whether anything was measured.</summary>
public static class ForecastWords
{
    /// <summary>When the jar is expected to be as sour as this household likes it.</summary>
    /// <param name="target">Days after packing to the target.</param>
    /// <param name="calendar">Turns them into dates.</param>
    /// <param name="last">The last pH that stands; null where nothing was measured.</param>
    public static string SourEnough(PassageDays target, ForecastCalendar calendar, PhMeasurement? last) =>
        $"{Expected(target, calendar, last is not null)}; {Measured(last, calendar)}.";

    /// <summary>What stands in its place once somebody has tasted that it is: no day is expected any more.</summary>
    public static string Tasted(Taste taste, ForecastCalendar calendar, PhMeasurement? last) =>
        $"Tasted {ObservationWords.Of(taste.Verdict)} {DateWords.When(taste.At.InZone(calendar.Zone).Date, calendar.Today)}; "
        + $"{Measured(last, calendar)}.";

    /// <summary>The same where it is said elsewhere what was measured.</summary>
    public static string SourEnough(PassageDays target, ForecastCalendar calendar, bool isMeasured) => $"{Expected(target, calendar, isMeasured)}.";

    /// <summary>The same in a few words, to be read at arm's length: <c>Thursday</c>, <c>now</c>, <c>12 November</c>, <c>after 3
    /// December</c>.</summary>
    public static string SourEnoughShort(PassageDays target, ForecastCalendar calendar)
    {
        if (target.P50 is not { } p50)
            return $"after {DateWords.Name(calendar.End, calendar.Today)}";
        LocalDate date = calendar.Date(p50);
        return date < calendar.Today ? "now" : DateWords.Name(date, calendar.Today);
    }

    /// <summary>When the brine is expected below the acid line, the late end first.</summary>
    /// <param name="line">Days after packing to pH 4.6.</param>
    /// <param name="calendar">Turns them into dates.</param>
    /// <param name="state">What was measured and counts.</param>
    /// <param name="hasReadings">Whether there are readings at all.</param>
    public static string AcidLine(PassageDays line, ForecastCalendar calendar, AcidLineState state, bool hasReadings)
    {
        string measured = state == AcidLineState.NotMeasured ? (hasReadings ? "no reading that counts yet" : "not measured")
            : state == AcidLineState.MeasuredAbove ? "last measured above" : "measured below";
        bool overdue = state == AcidLineState.MeasuredAbove && line.P90 is { } late && calendar.Date(late) <= calendar.Today;
        return overdue ? "Expected below 4.6 about now; last measured above."
            : $"{Passing(line, calendar, "Expected below 4.6", hasReadings)}; {measured}.";
    }

    /// <summary>When the middle of the largest piece is expected below the acid line, the late end first.</summary>
    /// <param name="line">Days after packing to pH 4.6 there.</param>
    /// <param name="calendar">Turns them into dates.</param>
    /// <param name="hasReadings">Whether there are readings at all.</param>
    public static string AcidLineInPieces(PassageDays line, ForecastCalendar calendar, bool hasReadings) =>
        $"{Passing(line, calendar, "The middle of the largest piece: expected below 4.6", hasReadings)}.";

    /// <summary>
    /// How far the dates may be off, never narrower than the 80 % interval on the calendar: a day, 3 days, a week, two weeks;
    /// beyond that both ends are named.
    /// </summary>
    public static string GiveOrTake(LocalDate early, LocalDate middle, LocalDate late, LocalDate today) =>
        GiveOrTake(early, middle, late, early, today);

    private static string GiveOrTake(LocalDate early, LocalDate middle, LocalDate late, LocalDate named, LocalDate today) =>
        Math.Max(Period.DaysBetween(early, middle), Period.DaysBetween(middle, late)) switch
        {
            <= 1 => "give or take a day",
            <= 3 => "give or take 3 days",
            <= 7 => "give or take a week",
            <= 14 => "give or take two weeks",
            _ => $"anywhere from {DateWords.Name(named, today)} to {DateWords.Name(late, today)}",
        };

    // Of a jar that nobody measured nothing is known to have happened: no date is named that has gone by.
    private static string Expected(PassageDays target, ForecastCalendar calendar, bool isMeasured)
    {
        LocalDate today = calendar.Today;
        string end = DateWords.Name(calendar.End, today);
        if (target.P10 is not { } p10)
            return $"Not expected to be sour enough by {end}, where the forecast ends";
        LocalDate early = isMeasured ? calendar.Date(p10) : LocalDate.Max(calendar.Date(p10), today);
        if (target.P50 is not { } p50)
            return $"Probably not sour enough before {end}, where the forecast ends; perhaps as early as {DateWords.Name(early, today)}";
        LocalDate middle = calendar.Date(p50);
        string spread = target.P90 is { } p90
            ? GiveOrTake(calendar.Date(p10), middle, calendar.Date(p90), early, today)
            : $"from {DateWords.Name(early, today)} on, perhaps not before {end}, where the forecast ends";
        if (middle < today && !isMeasured)
            return target.P90 is { } last && calendar.Date(last) <= today ? "Probably sour enough by now"
                : $"Probably sour enough by now, perhaps not before {DateWords.Name(LateEnd(target, calendar), today)}";
        return middle < today
            ? $"Probably sour enough by now, since {DateWords.Name(middle, today)}, {spread}"
            : $"Probably sour enough {DateWords.When(middle, today)}, {spread}";
    }

    private static LocalDate LateEnd(PassageDays days, ForecastCalendar calendar) => days.P90 is { } p90 ? calendar.Date(p90) : calendar.End;

    private static string Passing(PassageDays line, ForecastCalendar calendar, string subject, bool isMeasured)
    {
        LocalDate today = calendar.Today;
        string end = DateWords.Name(calendar.End, today);
        if (line.P90 is { } p90)
        {
            LocalDate late = calendar.Date(p90), early = calendar.Date(line.P10 ?? p90);
            string lateEnd = late < today ? $"{subject}, nine times in ten by now"
                : $"{subject}, nine times in ten by {DateWords.Name(late, today)}";
            return early == late || late < today ? lateEnd
                : $"{lateEnd}, perhaps {Early(early, today, isMeasured)}";
        }
        return line.P10 is { } p10
            ? $"{subject} late: perhaps not before {end}, where the forecast ends, perhaps {Early(calendar.Date(p10), today, isMeasured)}"
            : $"{subject} only after {end}, where the forecast ends, if at all";
    }

    private static string Early(LocalDate early, LocalDate today, bool isMeasured) =>
        early < today && !isMeasured ? "already" : $"as early as {DateWords.Name(early, today)}";

    private static string Measured(PhMeasurement? last, ForecastCalendar calendar) =>
        last is null ? "not measured" : string.Create(CultureInfo.InvariantCulture,
            $"last pH {last.Ph:0.0#} {DateWords.When(last.At.InZone(calendar.Zone).Date, calendar.Today)}");
}
