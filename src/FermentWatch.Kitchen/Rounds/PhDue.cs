using FermentWatch.Kitchen.AcidLines;
using NodaTime;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>
/// When a pH is asked for on the round. Daily until below 4.6, then weekly: Univ. of Minnesota Extension 2021. A household that
/// never measured is not nagged daily: days 5 and 7, then weekly (this project's own rule); no forecast moves these days.
/// </summary>
public static class PhDue
{
    /// <summary>The day on which a household that never measured is asked first.</summary>
    public const int FirstAsked = 5;

    private const int DaysOfAWeek = 7;

    /// <summary>Whether a pH is due on a date.</summary>
    /// <param name="date">The date of the round.</param>
    /// <param name="day">Days after packing, 0 on the day of packing.</param>
    /// <param name="line">What was measured and counts.</param>
    /// <param name="zone">The household's zone.</param>
    public static bool On(LocalDate date, int day, AcidLineReport line, DateTimeZone zone)
    {
        if (line.TooNear is { } near)
            return Period.DaysBetween(near.At.InZone(zone).Date, date) >= 1;
        if (line.State == AcidLineState.NotMeasured || line.LastCounted is not { } last)
            return day == FirstAsked || (day > 0 && day % DaysOfAWeek == 0);
        int since = Period.DaysBetween(last.At.InZone(zone).Date, date);
        return since >= (line.Settled || line.AwaitsBlended ? DaysOfAWeek : 1);
    }
}
