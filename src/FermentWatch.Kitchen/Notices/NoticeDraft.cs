using FermentWatch.Kitchen.Members;
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

/// <summary>Who is sent what, and when it may reach them. Nothing falls through: where it would reach nobody, everybody is sent it.</summary>
/// <param name="routes">How people are reached.</param>
/// <param name="roster">Who does the round when.</param>
/// <param name="zone">The household's zone.</param>
public sealed class Audience(IReadOnlyList<NoticeRoute> routes, Roster roster, DateTimeZone zone)
{
    /// <summary>Everybody.</summary>
    public IReadOnlyList<NoticeRoute> Everybody => routes;

    /// <summary>Those who do the round of a date.</summary>
    public IReadOnlyList<NoticeRoute> OfRound(LocalDate date) => OrEverybody(routes.Where(route => roster.IsOn(route.Person, date)));

    /// <summary>Adults who do not do the round of a date.</summary>
    public IReadOnlyList<NoticeRoute> AdultsBeside(LocalDate date) => [.. OfAdults().Except(OfRound(date))];

    /// <summary>Adults but one, who knows already.</summary>
    /// <param name="knows">Who knows already; null where nobody does.</param>
    public IReadOnlyList<NoticeRoute> OfAdults(string? knows = null)
    {
        var adults = routes.Where(route => !roster.Of(route.Person).IsChild).ToList();
        var others = adults.Where(route => route.Person != knows).ToList();
        return OrEverybody(others.Count > 0 ? others : adults);
    }

    /// <summary>When a person may be sent what is due at an instant: then, or at the end of this person's quiet hours.</summary>
    public Instant WhenFor(string person, Instant due) => roster.Of(person).Duty.Quiet is { } quiet ? quiet.Next(due, zone) : due;

    private IReadOnlyList<NoticeRoute> OrEverybody(IEnumerable<NoticeRoute> some) => some.ToList() is { Count: > 0 } reached ? reached : routes;
}
