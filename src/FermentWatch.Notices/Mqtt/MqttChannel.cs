using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.States;

namespace FermentWatch.Notices.Mqtt;

/// <summary>Publishes notices on the broker, as the same JSON that webhooks get.</summary>
public sealed class MqttChannel(IMessageOutlet outlet) : INoticeChannel
{
    public Channel Channel => Channel.Mqtt;

    /// <inheritdoc/>
    public async Task<DeliveryOutcome> SendAsync(Notice notice, NoticeRoute route, string? late, CancellationToken cancellationToken) =>
        await outlet.PublishAsync(route.Address, NoticeJson.Of(notice, late), retain: false, cancellationToken)
            ? DeliveryOutcome.Delivered
            : DeliveryOutcome.TryAgain("The broker cannot be reached.");
}
