using NodaTime;
using NodaTime.TimeZones;

namespace FermentWatch.Kitchen.Households;

/// <summary>
/// When rounds are due on a household's own calendar. An hour that the spring change skips is kept with the offset before
/// the gap (it comes later by the length of the gap), an hour that the autumn change repeats is its first occurrence: RFC
/// 5545, section 3.3.5. A date that the zone never had (Samoa's 30 December 2011) has no round.
/// </summary>
public static class RoundCalendar
{
    /// <summary>The instant at which a local time of a date is reached; null for a date the zone never had.</summary>
    public static Instant? At(LocalDate date, LocalTime time, DateTimeZone zone) =>
        Exists(date, zone) ? (date + time).InZoneLeniently(zone).ToInstant() : null;

    /// <summary>Whether the calendar of the zone has the date.</summary>
    public static bool Exists(LocalDate date, DateTimeZone zone)
    {
        ZoneLocalMapping morning = zone.MapLocal(date.AtMidnight());
        if (morning.Count > 0)
            return true;
        return morning.LateInterval.IsoLocalStart.Date == date;
    }

    /// <summary>The instant at which a date is over: the start of the next date the zone had.</summary>
    public static Instant EndOf(LocalDate date, DateTimeZone zone)
    {
        LocalDate next = date.PlusDays(1);
        while (!Exists(next, zone))
            next = next.PlusDays(1);
        return zone.AtStartOfDay(next).ToInstant();
    }

    /// <summary>Dates after <paramref name="last"/> whose round is due by now, oldest first.</summary>
    public static IEnumerable<(LocalDate Date, Instant DueAt)> DueAfter(LocalDate last, LocalTime time, DateTimeZone zone, Instant now)
    {
        for (LocalDate date = last.PlusDays(1); ; date = date.PlusDays(1))
        {
            if (At(date, time, zone) is { } due)
            {
                if (due > now)
                    yield break;
                yield return (date, due);
            }
        }
    }
}
