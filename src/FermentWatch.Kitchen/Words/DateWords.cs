using System.Globalization;
using NodaTime;

namespace FermentWatch.Kitchen.Words;

/// <summary>Names a date as people do: the weekday within a week, the date further on.</summary>
public static class DateWords
{
    private const int DaysNamedByWeekday = 6;

    /// <summary>The date as a name: <c>today</c>, <c>tomorrow</c>, <c>Thursday</c>, <c>12 November</c>, <c>3 March 2027</c>.</summary>
    public static string Name(LocalDate date, LocalDate today) => Period.DaysBetween(today, date) switch
    {
        0 => "today",
        1 => "tomorrow",
        -1 => "yesterday",
        > 1 and <= DaysNamedByWeekday => date.DayOfWeek.ToString(),
        _ => Dated(date, today),
    };

    /// <summary>The date by day and month, with the year where it is another: <c>12 November</c>, <c>3 March 2027</c>.</summary>
    public static string Dated(LocalDate date, LocalDate today) =>
        date.ToString(date.Year == today.Year ? "d MMMM" : "d MMMM uuuu", CultureInfo.InvariantCulture);

    /// <summary>The name with the word that goes before it in a sentence: <c>Thursday</c>, but <c>on 12 November</c>.</summary>
    public static string When(LocalDate date, LocalDate today)
    {
        string name = Name(date, today);
        return char.IsAsciiDigit(name[0]) ? $"on {name}" : name;
    }
}
