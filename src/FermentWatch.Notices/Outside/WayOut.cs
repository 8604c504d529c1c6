using System.Net;
using System.Net.Sockets;

namespace FermentWatch.Notices.Outside;

/// <summary>
/// The way to addresses that people of the household entered. Where they lead is the household's choice, but for addresses that only
/// the machine itself can reach and where hosts keep keys: those are never called, whatever a name resolves to at that moment.
/// </summary>
public static class WayOut
{
    private static readonly TimeSpan NameServersAreAskedAgainAfter = TimeSpan.FromMinutes(5);

    private static readonly IPNetwork[] Never =
    [
        // Link-local: RFC 3927 and RFC 4291, section 2.5.6. The first holds the usual address of a host's own keys.
        IPNetwork.Parse("169.254.0.0/16"), IPNetwork.Parse("fe80::/10"),
        // Other addresses at which machines that are rented answer with keys of theirs (common practice, no source).
        IPNetwork.Parse("100.100.100.200/32"), IPNetwork.Parse("168.63.129.16/32"), IPNetwork.Parse("192.0.0.192/32"),
        IPNetwork.Parse("fd00:ec2::254/128"), IPNetwork.Parse("fd20:ce::254/128"),
    ];

    /// <summary>IPv4 addresses as a gateway translates them: RFC 6052, section 2.1.</summary>
    private static readonly IPNetwork Translated = IPNetwork.Parse("64:ff9b::/96");

    /// <summary>A handler that follows no redirect and looks at each address before it connects.</summary>
    public static SocketsHttpHandler Handler() =>
        new() { PooledConnectionLifetime = NameServersAreAskedAgainAfter, AllowAutoRedirect = false, ConnectCallback = ConnectAsync };

    /// <summary>Whether an address may be called.</summary>
    public static bool MayCall(IPAddress address)
    {
        IPAddress plain = address.IsIPv4MappedToIPv6 ? address.MapToIPv4()
            : Translated.Contains(address) ? new IPAddress(address.GetAddressBytes().AsSpan(12)) : address;
        return !Never.Any(network => network.Contains(plain));
    }

    private static async ValueTask<Stream> ConnectAsync(SocketsHttpConnectionContext context, CancellationToken cancellationToken)
    {
        IPAddress[] addresses = await Dns.GetHostAddressesAsync(context.DnsEndPoint.Host, cancellationToken);
        if (!addresses.All(MayCall))
            throw new HttpRequestException("it leads to a link-local address or to one where hosts keep keys, which are never called.");
        var socket = new Socket(SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
        try
        {
            await socket.ConnectAsync(addresses, context.DnsEndPoint.Port, cancellationToken);
            return new NetworkStream(socket, ownsSocket: true);
        }
        catch
        {
            socket.Dispose();
            throw;
        }
    }
}
