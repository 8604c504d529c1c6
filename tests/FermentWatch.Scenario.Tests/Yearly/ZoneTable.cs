using NodaTime;

namespace FermentWatch.Scenario.Tests.Yearly;

/// <summary>
/// Offsets of a zone as <c>zdump -v</c> of Debian's tzdata prints them, kept apart from the tz database the product brings, so
/// that the promised times are found by another way.
/// </summary>
/// <param name="Name">Its name in the tz database.</param>
/// <param name="First">Offset before the first change, hours.</param>
/// <param name="Changes">Each change: its instant and the hours after it.</param>
internal sealed record ZoneTable(string Name, double First, params (Instant At, double Hours)[] Changes)
{
    public static readonly ZoneTable NewYork = new("America/New_York", -5,
        (Instant.FromUtc(2026, 3, 8, 7, 0), -4), (Instant.FromUtc(2026, 11, 1, 6, 0), -5), (Instant.FromUtc(2027, 3, 14, 7, 0), -4));

    public static readonly ZoneTable Berlin = new("Europe/Berlin", 1,
        (Instant.FromUtc(2026, 3, 29, 1, 0), 2), (Instant.FromUtc(2026, 10, 25, 1, 0), 1), (Instant.FromUtc(2027, 3, 28, 1, 0), 2));

    /// <summary>No daylight saving.</summary>
    public static readonly ZoneTable Tokyo = new("Asia/Tokyo", 9);

    /// <summary>Half an hour of daylight saving.</summary>
    public static readonly ZoneTable LordHowe = new("Australia/Lord_Howe", 11,
        (Instant.FromUtc(2026, 4, 4, 15, 0), 10.5), (Instant.FromUtc(2026, 10, 3, 15, 30), 11), (Instant.FromUtc(2027, 4, 3, 15, 0), 10.5));

    /// <summary>Samoa, which went over the date line: 30 December 2011 never was.</summary>
    public static readonly ZoneTable Apia = new("Pacific/Apia", -10,
        (Instant.FromUtc(2011, 4, 2, 14, 0), -11), (Instant.FromUtc(2011, 9, 24, 14, 0), -10), (Instant.FromUtc(2011, 12, 30, 10, 0), 14),
        (Instant.FromUtc(2012, 3, 31, 14, 0), 13));

    /// <summary>
    /// When a local time is reached: the first of two occurrences; one that is skipped by the offset before the gap (RFC 5545,
    /// Desruisseaux 2009, section 3.3.5); null on a date the zone never had.
    /// </summary>
    public Instant? At(LocalDate date, LocalTime time)
    {
        var pieces = Pieces().ToList();
        if (!pieces.Exists(piece => Local(piece.From, piece.Hours).Date <= date && date <= Local(piece.Until - Duration.Epsilon, piece.Hours).Date))
            return null;
        foreach ((Instant from, Instant until, double hours) in pieces)
        {
            Instant at = Back(date + time, hours);
            if (from <= at && at < until)
                return at;
            if (at < from)
                return Back(date + time, pieces.Last(piece => piece.Until == from).Hours);
        }
        return null;
    }

    /// <summary>What the clock on the wall shows.</summary>
    public LocalDateTime Local(Instant instant) => Local(instant, Pieces().First(piece => instant < piece.Until).Hours);

    /// <summary>Dates on which the wall clock is changed, or right after a date that never was.</summary>
    public IEnumerable<LocalDate> DatesOfChange() => Changes.Select(change => Local(change.At).Date);

    private IEnumerable<(Instant From, Instant Until, double Hours)> Pieces()
    {
        Instant from = Instant.FromUtc(2000, 1, 1, 0, 0);
        double hours = First;
        foreach ((Instant at, double after) in Changes)
        {
            yield return (from, at, hours);
            (from, hours) = (at, after);
        }
        yield return (from, Instant.FromUtc(2100, 1, 1, 0, 0), hours);
    }

    private static LocalDateTime Local(Instant instant, double hours) => (instant + Duration.FromHours(hours)).InUtc().LocalDateTime;

    private static Instant Back(LocalDateTime local, double hours) => local.InUtc().ToInstant() - Duration.FromHours(hours);
}
