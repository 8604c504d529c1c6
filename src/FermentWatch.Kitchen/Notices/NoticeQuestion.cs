using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using NodaTime;

namespace FermentWatch.Kitchen.Notices;

/// <summary>What a notice asks: whether all is well with these jars on this date.</summary>
/// <param name="Date">The date it is about.</param>
/// <param name="Until">End of that date: an answer given later would say something of another day.</param>
/// <param name="Shelves">The jars by shelf, in shelf order; at least one.</param>
public sealed record NoticeQuestion(LocalDate Date, Instant Until, IReadOnlyList<AskedShelf> Shelves)
{
    /// <summary>Numbers of its jars that nobody has answered for on its date.</summary>
    public IReadOnlySet<int> Waiting(IEnumerable<Jar> kept, DateTimeZone zone) => kept
        .Where(jar => jar.Stage == JarStage.Fermenting && !Answered.On(jar, Date, zone))
        .Select(jar => jar.Number).Intersect(Shelves.SelectMany(shelf => shelf.Jars)).ToHashSet();
}

/// <summary>The jars of one place that a notice asks about.</summary>
/// <param name="PlaceId">The place.</param>
/// <param name="Place">Its name, as it stood in the notice.</param>
/// <param name="Jars">Numbers of the jars, in order.</param>
/// <param name="ToOpen">Numbers of those that were to be opened.</param>
public sealed record AskedShelf(Guid PlaceId, string Place, IReadOnlyList<int> Jars, IReadOnlyList<int> ToOpen);

/// <summary>A way to say "all well" without signing in: for one person, for these jars, on this date, once.</summary>
/// <param name="Shelf">Name of the shelf; null for the whole round.</param>
/// <param name="Path">Address on this service, from the first slash. What is sent there by GET changes nothing.</param>
public sealed record AnswerLink(string? Shelf, string Path);

/// <summary>What a link answers.</summary>
/// <param name="NoticeId">The notice it came with.</param>
/// <param name="PlaceId">The shelf; null for the whole round.</param>
public sealed record AnswerScope(Guid NoticeId, Guid? PlaceId);

/// <summary>Makes the addresses by which a notice can be answered, and knows them again.</summary>
public interface INoticeLinks
{
    /// <summary>The address people reach the pages by, with a slash at its end; null where the settings do not say.</summary>
    Uri? Root { get; }

    /// <summary>The ways to answer a notice; empty where it asks nothing.</summary>
    IReadOnlyList<AnswerLink> Of(Notice notice);

    /// <summary>What a link's token stands for; null for one that we did not make.</summary>
    AnswerScope? Open(string token);
}

/// <summary>The answer "later": the same question is asked again on the same day.</summary>
public static class Postponing
{
    /// <summary>How much later it is asked again.</summary>
    public static readonly Duration Length = Duration.FromHours(2);

    /// <summary>The notice that asks again; null where the day would be over. Made once from a notice, however often it is said.</summary>
    public static Notice? AskAgain(Notice notice, Instant now)
    {
        if (notice.Question is not { } question || now + Length >= question.Until)
            return null;
        return new Notice
        {
            Id = Guid.CreateVersion7(now.ToDateTimeOffset()), Key = $"later/{notice.Id:N}", RouteId = notice.RouteId, Person = notice.Person,
            Title = notice.Title, Body = notice.Body, Question = question,
            DueAt = now + Length, ExpiresAt = question.Until, NextAttemptAt = now + Length,
        };
    }
}
