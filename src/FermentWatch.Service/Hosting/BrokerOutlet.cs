using FermentWatch.Intake.Embedded;
using FermentWatch.Kitchen.States;

namespace FermentWatch.Service.Hosting;

/// <summary>The embedded broker as the way out. Where it is switched off nobody listens, and nothing is said.</summary>
internal sealed class BrokerOutlet(Broker broker, BrokerOptions options) : IMessageOutlet
{
    private const string StatusTopic = "fermentwatch/service/status";

    public Task PublishAsync(string topic, ReadOnlyMemory<byte> payload, bool retain, CancellationToken cancellationToken) =>
        options.Enabled ? broker.PublishAsync(topic, payload, retain, cancellationToken) : Task.CompletedTask;

    public Task SayOnlineAsync(CancellationToken cancellationToken) =>
        PublishAsync(StatusTopic, "online"u8.ToArray(), retain: true, cancellationToken);

    public Task SayOfflineAsync(CancellationToken cancellationToken) =>
        PublishAsync(StatusTopic, "offline"u8.ToArray(), retain: true, cancellationToken);
}
