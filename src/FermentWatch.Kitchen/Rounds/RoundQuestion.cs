using FermentWatch.Kitchen.Notices;
using NodaTime;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>Lets the messages of a round ask whether all is well.</summary>
public static class RoundQuestion
{
    /// <summary>Puts the question to each of the messages: all jars of the sheet that nobody has looked at.</summary>
    /// <param name="messages">The messages.</param>
    /// <param name="sheet">What is to be looked at.</param>
    /// <param name="until">When an answer would say something of another day.</param>
    /// <param name="opening">Whether those asked open jars too; children only look.</param>
    /// <returns>The same messages.</returns>
    public static IReadOnlyList<Notice> Ask(IReadOnlyList<Notice> messages, RoundSheet sheet, Instant until, bool opening = true)
    {
        var shelves = sheet.Shelves
            .Select(shelf => (shelf.Place, Jars: shelf.Jars.Where(each => !each.LookedAtToday).ToList()))
            .Where(shelf => shelf.Jars.Count > 0)
            .Select(shelf => new AskedShelf(shelf.Place.Id, shelf.Place.Name, Numbers(shelf.Jars),
                Numbers(shelf.Jars.Where(each => opening && each.Opening))))
            .ToList();
        if (shelves.Count > 0)
            foreach (Notice message in messages)
                message.Question = new NoticeQuestion(sheet.Date, until, shelves);
        return messages;
    }

    private static IReadOnlyList<int> Numbers(IEnumerable<RoundJar> jars) => [.. jars.Select(each => each.Jar.Number).Order()];
}
