using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using FermentWatch.Intake.Embedded;
using FermentWatch.Kitchen.Sensors;

namespace FermentWatch.Service.Hosting;

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
