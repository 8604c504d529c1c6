using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Notices;

namespace FermentWatch.Acts.Notices;

/// <summary>What became of a notice, in words.</summary>
internal static class NoticeWords
{
    /// <summary>How far it is.</summary>
    public static string Of(Notice notice) => notice.State switch
    {
        NoticeState.Delivered => "delivered",
        NoticeState.Expired => "not delivered in time, given up",
        NoticeState.Answered => "answered before it was sent",
        NoticeState.Refused => "refused by the receiver",
        _ => notice.Attempts == 0 ? "waiting" : notice.Attempts == 1 ? "tried once, is tried again"
            : $"tried {notice.Attempts} times, is tried again",
    };

    /// <summary>The same as a heading.</summary>
    public static string Head(Channel channel) => char.ToUpperInvariant(Of(channel)[0]) + Of(channel)[1..];

    /// <summary>
    /// Where a route leads, as far as it is shown: of a browser's endpoint only whose service it is; of a web address, to whoever is no
    /// adult, only the host, as names, paths and queries of such addresses hold keys.
    /// </summary>
    public static string Address(NoticeRoute route, MemberRole sees) => route.Channel switch
    {
        Channel.WebPush when PushEndpoint.IsOne(route.Address) => PushEndpoint.Origin(route.Address),
        Channel.Webhook when sees != MemberRole.Adult =>
            Uri.TryCreate(route.Address, UriKind.Absolute, out Uri? url) ? $"{url.Scheme}://{url.Authority}/…" : "…",
        _ => route.Address,
    };

    /// <summary>A channel as people call it.</summary>
    public static string Of(Channel channel) => channel switch
    {
        Channel.Webhook => "webhook",
        Channel.Mqtt => "MQTT",
        Channel.Email => "e-mail",
        Channel.WebPush => "web push",
        _ => channel.ToString(),
    };
}
