using NodaTime;

namespace FermentWatch.Kitchen.Members;

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

    /// <summary>Whether the set holds a date's day of the week.</summary>
    public static bool Hold(this Weekdays days, LocalDate date) => days.HasFlag(Each[(int)date.DayOfWeek - (int)IsoDayOfWeek.Monday]);
}
