using NodaTime;

namespace FermentWatch.Kitchen.Notices;

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
