using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.States;

namespace FermentWatch.Notices.Mqtt;

/// <summary>Publishes notices on the broker, as the same JSON that webhooks get.</summary>
public sealed class MqttChannel(IMessageOutlet outlet) : INoticeChannel
{
    public Channel Channel => Channel.Mqtt;

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
