using FermentWatch.Kitchen.Notices;

namespace FermentWatch.Service.Pages.Notices;

/// <summary>What became of a notice, in words.</summary>
internal static class NoticeWords
{
    /// <summary>How far it is.</summary>
    public static string Of(Notice notice) => notice.State switch
    {
        NoticeState.Delivered => "delivered",
        NoticeState.Expired => "not delivered in time, given up",
        NoticeState.Refused => "refused by the receiver",
        _ => notice.Attempts == 0 ? "waiting" : notice.Attempts == 1 ? "tried once, is tried again" : $"tried {notice.Attempts} times, is tried again",
    };

    /// <summary>The same as a heading.</summary>
    public static string Head(Channel channel) => char.ToUpperInvariant(Of(channel)[0]) + Of(channel)[1..];

    /// <summary>A channel as people call it.</summary>
    public static string Of(Channel channel) => channel switch
    {
        Channel.Webhook => "webhook",
        Channel.Mqtt => "MQTT",
        Channel.Email => "e-mail",
        _ => channel.ToString(),
    };
}
