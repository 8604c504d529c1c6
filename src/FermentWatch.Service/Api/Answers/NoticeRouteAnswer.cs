using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Service.Pages.Notices;

namespace FermentWatch.Service.Api.Answers;

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
        route.Id, route.Person, route.Channel, NoticeWords.Address(route, sees), route.Channel == Channel.Webhook && !string.IsNullOrEmpty(route.Secret), route.MadeBy);
}
