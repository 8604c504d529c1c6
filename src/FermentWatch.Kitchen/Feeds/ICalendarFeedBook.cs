namespace FermentWatch.Kitchen.Feeds;

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
