using FermentWatch.Kitchen.Notices;
using NodaTime;
using NodaTime.TimeZones;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>Lets the messages of a round ask whether all is well.</summary>
public static class RoundQuestion
{
    /// <summary>Puts the question to each of the messages: all jars of the sheet that nobody has looked at.</summary>
    /// <returns>The same messages.</returns>
    public static IReadOnlyList<Notice> Ask(IReadOnlyList<Notice> messages, RoundSheet sheet, DateTimeZone zone)
    {
        var shelves = sheet.Shelves
            .Select(shelf => (shelf.Place, Jars: shelf.Jars.Where(each => !each.LookedAtToday).ToList()))
            .Where(shelf => shelf.Jars.Count > 0)
            .Select(shelf => new AskedShelf(shelf.Place.Id, shelf.Place.Name, Numbers(shelf.Jars), Numbers(shelf.Jars.Where(each => each.Opening))))
            .ToList();
        if (shelves.Count > 0)
            foreach (Notice message in messages)
                message.Question = new NoticeQuestion(sheet.Date, EndOf(sheet.Date, zone), shelves);
        return messages;
    }

    private static IReadOnlyList<int> Numbers(IEnumerable<RoundJar> jars) => [.. jars.Select(each => each.Jar.Number).Order()];

    /// <summary>The instant at which the zone's calendar leaves a date it had.</summary>
    private static Instant EndOf(LocalDate date, DateTimeZone zone)
    {
        ZoneLocalMapping midnight = zone.MapLocal(date.PlusDays(1).AtMidnight());
        return midnight.Count > 0 ? midnight.First().ToInstant() : midnight.LateInterval.Start;
    }
}
