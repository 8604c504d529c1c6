using FermentWatch.Acts.Notices;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Occasions;
using NodaTime;

namespace FermentWatch.Web.Api.Answers;

/// <summary>What became of one notice.</summary>
/// <param name="Key">Person, occasion and route.</param>
/// <param name="Person">Whom it is for.</param>
/// <param name="Title">Its heading.</param>
/// <param name="State">How far it is.</param>
/// <param name="DueAt">When it should arrive.</param>
/// <param name="Attempts">How often delivery was tried.</param>
/// <param name="SettledAt">When it was delivered or given up.</param>
/// <param name="LastTrouble">What the last attempt said, when it failed.</param>
public sealed record NoticeAnswer(
    string Key, string Person, string Title, NoticeState State, Instant DueAt, int Attempts, Instant? SettledAt, string? LastTrouble)
{
    public static NoticeAnswer Of(Notice notice) => new(
        notice.Key, notice.Person, notice.Title, notice.State, notice.DueAt, notice.Attempts, notice.SettledAt, notice.LastTrouble);
}

/// <summary>How one person is reached.</summary>
/// <param name="Id">By which it can be removed.</param>
/// <param name="Person">The name the household uses.</param>
/// <param name="Channel">The channel.</param>
/// <param name="Address">Mail address, web address or topic; for web push whose push service it is, and not the browser's own address there.</param>
/// <param name="HasSecret">Whether a webhook's bodies are signed.</param>
/// <param name="MadeBy">Who of the household added it, or keeps it; null where that was not noted.</param>
public sealed record NoticeRouteAnswer(Guid Id, string Person, Channel Channel, string Address, bool HasSecret, string? MadeBy)
{
    public static NoticeRouteAnswer Of(NoticeRoute route, MemberRole sees) => new(
        route.Id, route.Person, route.Channel, NoticeWords.Address(route, sees), route.Channel == Channel.Webhook
            && !string.IsNullOrEmpty(route.Secret), route.MadeBy);
}

/// <summary>A kind of occasion.</summary>
/// <param name="Kind">Its name.</param>
/// <param name="Words">What people call it.</param>
/// <param name="Muted">Whether this household is not told of it.</param>
public sealed record OccasionKindAnswer(OccasionKind Kind, string Words, bool Muted);

/// <summary>How a test message ended.</summary>
/// <param name="Result">Whether the receiver took it.</param>
/// <param name="Trouble">What went wrong; null if it was taken.</param>
public sealed record TestAnswer(DeliveryResult Result, string? Trouble);

/// <summary>Where a calendar is fetched.</summary>
/// <param name="Path">Its address on this service; a secret.</param>
public sealed record CalendarAddressAnswer(string Path);
