using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using FermentWatch.Intake.Embedded;
using FermentWatch.Intake.Outside;
using FermentWatch.Kitchen.Publishing;
using FermentWatch.Kitchen.Sensors;
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

/// <summary>Where sensors find a broker that listens as set.</summary>
internal static class BrokerAddresses
{
    /// <summary>Its address; where it listens everywhere, this machine's own on its network.</summary>
    public static BrokerAddress Of(BrokerOptions options)
    {
        IPAddress listens = IPAddress.Parse(options.BindAddress);
        bool everywhere = listens.Equals(IPAddress.Any) || listens.Equals(IPAddress.IPv6Any);
        return new BrokerAddress(
            everywhere ? OnTheNetwork() : listens.ToString(), options.PlainEnabled ? options.Port : options.TlsPort, !options.PlainEnabled,
                options.Enabled);
    }

    private static string OnTheNetwork() => NetworkInterface.GetAllNetworkInterfaces()
        .Where(network => network.OperationalStatus == OperationalStatus.Up && network.NetworkInterfaceType != NetworkInterfaceType.Loopback)
        .SelectMany(network => network.GetIPProperties().UnicastAddresses)
        .Where(unicast => unicast.Address.AddressFamily == AddressFamily.InterNetwork)
        .Select(unicast => unicast.Address.ToString())
        .FirstOrDefault() ?? Dns.GetHostName();
}
