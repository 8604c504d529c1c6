using FermentWatch.Intake.Embedded;
using FermentWatch.Intake.Outside;
using FermentWatch.Kitchen.Publishing;
using FermentWatch.Kitchen.Topics;

namespace FermentWatch.Service.Hosting;

/// <summary>The brokers as the way out: ours, the household's, or both. Where both are off nobody gets anything.</summary>
internal sealed class BrokersOutlet(Broker broker, BrokerOptions options, OutsideLink? link) : IMessageOutlet
{
    public async Task<bool> PublishAsync(string topic, ReadOnlyMemory<byte> payload, bool retain, CancellationToken cancellationToken)
    {
        // Ours can always be reached. What is said once only is said to both or to none, so that trying again tells nobody twice.
        if (link is not null && !await link.PublishAsync(topic, payload, retain, cancellationToken))
        {
            if (options.Enabled && retain)
                await broker.PublishAsync(topic, payload, retain, cancellationToken);
            return false;
        }
        bool gotOnOurs = options.Enabled && await broker.PublishAsync(topic, payload, retain, cancellationToken);
        // The household's broker has taken it, and answers for it to those who listen there.
        return gotOnOurs || retain || link is not null;
    }

    /// <summary>Says on our broker that the service is there; the link says it on the other.</summary>
    public Task SayOnlineAsync(CancellationToken cancellationToken) =>
        broker.PublishAsync(OwnTopics.ServiceStatus, "online"u8.ToArray(), retain: true, cancellationToken);

    /// <summary>Says on our broker that the service leaves.</summary>
    public Task SayOfflineAsync(CancellationToken cancellationToken) =>
        broker.PublishAsync(OwnTopics.ServiceStatus, "offline"u8.ToArray(), retain: true, cancellationToken);
}
