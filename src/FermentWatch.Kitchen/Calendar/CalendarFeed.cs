using NodaTime;

namespace FermentWatch.Kitchen.Calendar;

/// <summary>The secret address of one person's calendar. Whoever knows it reads the tasting days and rounds, and nothing else.</summary>
/// <param name="Person">The name the household uses; the key.</param>
/// <param name="Secret">The secret part of the address, letters and digits only.</param>
/// <param name="MadeAt">When it was made.</param>
public sealed record CalendarFeed(string Person, string Secret, Instant MadeAt);

/// <summary>The record of calendar addresses.</summary>
public interface ICalendarFeedBook
{
    /// <summary>The feed of a person, or null.</summary>
    Task<CalendarFeed?> OfAsync(string person, CancellationToken cancellationToken);

    /// <summary>The feed of a secret, or null.</summary>
    Task<CalendarFeed?> FindAsync(string secret, CancellationToken cancellationToken);

    /// <summary>Writes down a person's feed; the one before opens nothing any more.</summary>
    Task RenewAsync(CalendarFeed feed, CancellationToken cancellationToken);
}

/// <summary>Writes the coming days as a file that calendars read.</summary>
public interface ICalendarFile
{
    /// <summary>Media type of the file.</summary>
    string MediaType { get; }

    /// <summary>Writes the file; the same days give the same bytes.</summary>
    /// <param name="days">What it shows.</param>
    /// <param name="root">Address of the pages; null leaves the links out.</param>
    string Of(ComingDays days, Uri? root);
}
