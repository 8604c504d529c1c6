using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using FermentWatch.Intake.Embedded;

namespace FermentWatch.Service.Pages.Sensors;

/// <summary>Where a sensor finds the broker.</summary>
/// <param name="Host">An address of this machine.</param>
/// <param name="Port">The port.</param>
/// <param name="Tls">Whether it must speak TLS there.</param>
internal sealed record BrokerAddress(string Host, int Port, bool Tls = false)
{
    /// <summary>The address of a broker that listens as set; where it listens everywhere, this machine's own on its network.</summary>
    public static BrokerAddress Of(BrokerOptions options)
    {
        IPAddress listens = IPAddress.Parse(options.BindAddress);
        bool everywhere = listens.Equals(IPAddress.Any) || listens.Equals(IPAddress.IPv6Any);
        return new BrokerAddress(everywhere ? OnTheNetwork() : listens.ToString(), options.PlainEnabled ? options.Port : options.TlsPort, !options.PlainEnabled);
    }

    private static string OnTheNetwork() => NetworkInterface.GetAllNetworkInterfaces()
        .Where(network => network.OperationalStatus == OperationalStatus.Up && network.NetworkInterfaceType != NetworkInterfaceType.Loopback)
        .SelectMany(network => network.GetIPProperties().UnicastAddresses)
        .Where(unicast => unicast.Address.AddressFamily == AddressFamily.InterNetwork)
        .Select(unicast => unicast.Address.ToString())
        .FirstOrDefault() ?? Dns.GetHostName();
}
