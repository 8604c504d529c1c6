using NodaTime;

namespace FermentWatch.Kitchen.Notices;

/// <summary>What is to be said, before it is known to whom.</summary>
/// <param name="Occasion">Names the occasion; with person and route it is the notice's key.</param>
/// <param name="Title">What and which.</param>
/// <param name="Body">Why now and what to do.</param>
/// <param name="DueAt">When it should arrive.</param>
/// <param name="ExpiresAt">When it has become pointless.</param>
public sealed record NoticeDraft(string Occasion, string Title, string Body, Instant DueAt, Instant ExpiresAt)
{
    /// <summary>The notices for these routes. One whose person is left in peace until it is pointless is not made.</summary>
    public IReadOnlyList<Notice> For(IEnumerable<NoticeRoute> routes, Audience audience) =>
        [.. routes.Select(route => (Route: route, At: audience.WhenFor(route.Person, DueAt))).Where(each => each.At < ExpiresAt).Select(each =>
            new Notice
        {
            Id = Guid.CreateVersion7(DueAt.ToDateTimeOffset()), Key = $"{Occasion}/{Uri.EscapeDataString(each.Route.Person)}/{each.Route.Id:N}",
            RouteId = each.Route.Id, Person = each.Route.Person, Title = Title, Body = Body,
            DueAt = each.At, ExpiresAt = ExpiresAt, NextAttemptAt = each.At,
        })];
}
