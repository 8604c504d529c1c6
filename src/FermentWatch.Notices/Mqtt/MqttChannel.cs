using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Publishing;

namespace FermentWatch.Notices.Mqtt;

/// <summary>
/// Publishes notices on the broker, as the same JSON that webhooks get but for the links that answer: everybody on the broker may
/// read along. Where nobody gets one it is tried again until it is pointless, so that a listener who comes back after a restart
/// still hears of it.
/// </summary>
public sealed class MqttChannel(IMessageOutlet outlet) : INoticeChannel
{
    public Channel Channel => Channel.Mqtt;

    /// <inheritdoc/>
    public string? WouldBeRight(string? address) => !string.IsNullOrWhiteSpace(address) && address.IndexOfAny(['+', '#', '\0']) < 0
        ? null : "a topic such as kitchen/notices would be right";

    /// <inheritdoc/>
    public async Task<DeliveryOutcome> SendAsync(Notice notice, NoticeRoute route, string? late, CancellationToken cancellationToken) =>
        await outlet.PublishAsync(route.Address, NoticeJson.Of(notice, late), retain: false, cancellationToken)
            ? DeliveryOutcome.Delivered
            : DeliveryOutcome.TryAgain($"Nobody listens to {route.Address}, or the broker cannot be reached.");
}
