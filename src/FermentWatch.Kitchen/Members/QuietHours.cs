using FermentWatch.Kitchen.Households;
using NodaTime;

namespace FermentWatch.Kitchen.Members;

/// <summary>The hours in which one person is sent nothing, on the household's own clock; they may span midnight.</summary>
/// <param name="From">When they begin.</param>
/// <param name="Until">When they end; not the same time as they begin.</param>
public readonly record struct QuietHours(LocalTime From, LocalTime Until)
{
    /// <summary>Whether a time of day lies within; the end does not.</summary>
    public bool Hold(LocalTime time) => From < Until ? time >= From && time < Until : time >= From || time < Until;

    /// <summary>The instant itself where it is not quiet, else the end of the quiet hours it lies in.</summary>
    public Instant Next(Instant instant, DateTimeZone zone)
    {
        LocalDateTime local = instant.InZone(zone).LocalDateTime;
        if (!Hold(local.TimeOfDay))
            return instant;
        LocalDate date = local.TimeOfDay < Until ? local.Date : local.Date.PlusDays(1);
        // A date the zone never had is stepped over; so is an end that the autumn change puts before the present.
        while (true)
        {
            if (RoundCalendar.At(date, Until, zone) is { } end && end > instant)
                return end;
            date = date.PlusDays(1);
        }
    }
}

/// <summary>A set of days of the week.</summary>
[Flags]
public enum Weekdays
{
    None = 0,
    Monday = 1,
    Tuesday = 2,
    Wednesday = 4,
    Thursday = 8,
    Friday = 16,
    Saturday = 32,
    Sunday = 64,
    All = 127,
}

/// <summary>Asking a set of days.</summary>
public static class WeekdaySets
{
    /// <summary>The days by themselves, Monday first.</summary>
    public static readonly IReadOnlyList<Weekdays> Each =
        [Weekdays.Monday, Weekdays.Tuesday, Weekdays.Wednesday, Weekdays.Thursday, Weekdays.Friday, Weekdays.Saturday, Weekdays.Sunday];

    /// <summary>The days by themselves, in the order of a week that begins on a day.</summary>
    public static IEnumerable<Weekdays> From(IsoDayOfWeek start) =>
        Each.Concat(Each).Skip((int)start - (int)IsoDayOfWeek.Monday).Take(Each.Count);

    /// <summary>Whether the set holds a date's day of the week.</summary>
    public static bool Hold(this Weekdays days, LocalDate date) => days.HasFlag(Each[(int)date.DayOfWeek - (int)IsoDayOfWeek.Monday]);
}
