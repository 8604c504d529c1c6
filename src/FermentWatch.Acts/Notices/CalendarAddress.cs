using System.Security.Cryptography;
using FermentWatch.Kitchen.Calendar;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Notices;

/// <summary>Where people get the address of their calendar, from the page and the API.</summary>
public sealed class CalendarAddress(ICalendarFeedBook feeds, ComingDaysReader days, TimeProvider clock)
{
    private const int SecretBytes = 16;

    /// <summary>Path of a person's calendar below the first page; null where none was made.</summary>
    public async Task<string?> PathAsync(string person, CancellationToken cancellationToken) =>
        await feeds.OfAsync(person, cancellationToken) is { } feed ? PathOf(feed.Secret) : null;

    /// <summary>What is to come for whoever has the calendar of a secret; null where none has.</summary>
    public async Task<ComingDays?> DaysAsync(string secret, CancellationToken cancellationToken) =>
        await feeds.FindAsync(secret, cancellationToken) is { } feed
            ? await days.ReadAsync(feed.Person, clock.GetUtcNow().ToInstant(), cancellationToken) : null;

    /// <summary>Makes a new address; the one before stops at once.</summary>
    public async Task<string> RenewAsync(string person, CancellationToken cancellationToken)
    {
        string secret = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(SecretBytes));
        await feeds.RenewAsync(new CalendarFeed(person, secret, clock.GetUtcNow().ToInstant()), cancellationToken);
        return PathOf(secret);
    }

    private static string PathOf(string secret) => $"calendar/{secret}.ics";
}
