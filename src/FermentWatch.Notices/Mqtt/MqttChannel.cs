using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.States;

namespace FermentWatch.Notices.Mqtt;

/// <summary>
/// Publishes notices on the broker, as the same JSON that webhooks get but for the links that answer: everybody on the broker may
/// read along.
/// </summary>
public sealed class MqttChannel(IMessageOutlet outlet) : INoticeChannel
{
    public Channel Channel => Channel.Mqtt;

    /// <inheritdoc/>
    public string? WouldBeRight(string? address) => !string.IsNullOrWhiteSpace(address) && address.IndexOfAny(['+', '#', '\0']) < 0
        ? null : "a topic such as kitchen/notices would be right";

    /// <inheritdoc/>
    public async Task<DeliveryOutcome> SendAsync(Notice notice, NoticeRoute route, string? late, CancellationToken cancellationToken)
    {
        try
        {
            await outlet.PublishAsync(route.Address, NoticeJson.Of(notice, late), retain: false, cancellationToken);
            return DeliveryOutcome.Delivered;
        }
        catch (InvalidOperationException trouble)
        {
            return DeliveryOutcome.TryAgain(trouble.Message);
        }
    }
}
