using FermentWatch.Kitchen.Notices;
using FermentWatch.Service.Pages.Notices;

namespace FermentWatch.Service.Api.Answers;

/// <summary>How one person is reached.</summary>
/// <param name="Id">By which it can be removed.</param>
/// <param name="Person">The name the household uses.</param>
/// <param name="Channel">The channel.</param>
/// <param name="Address">Mail address, web address or topic; for web push whose push service it is, and not the browser's own address there.</param>
/// <param name="HasSecret">Whether a webhook's bodies are signed.</param>
public sealed record NoticeRouteAnswer(Guid Id, string Person, Channel Channel, string Address, bool HasSecret)
{
    public static NoticeRouteAnswer Of(NoticeRoute route) => new(
        route.Id, route.Person, route.Channel, NoticeWords.Address(route), route.Channel == Channel.Webhook && !string.IsNullOrEmpty(route.Secret));
}
