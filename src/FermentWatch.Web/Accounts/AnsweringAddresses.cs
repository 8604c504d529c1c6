using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;

namespace FermentWatch.Web.Accounts;

/// <summary>Every address at which the pages answer, those of the home network first: a phone comes in by them.</summary>
internal static class AnsweringAddresses
{
    private static readonly string[] ForAny = ["0.0.0.0", "[::]", "+", "*"];

    /// <summary>The addresses of a server that listens, with "everywhere" spelt out.</summary>
    /// <param name="listening">Where the server says that it listens.</param>
    /// <param name="own">Addresses of this machine.</param>
    public static IReadOnlyList<Uri> Of(IEnumerable<string> listening, IReadOnlyList<IPAddress> own)
    {
        var all = new List<Uri>();
        foreach (string url in listening)
        {
            BindingAddress address = BindingAddress.Parse(url);
            if (!ForAny.Contains(address.Host))
                all.Add(new Uri(url));
            else
                all.AddRange(own.OrderBy(IPAddress.IsLoopback).Select(each => new UriBuilder(address.Scheme, each.ToString(), address.Port).Uri));
        }
        return [.. all.Distinct()];
    }

    /// <summary>Addresses of this machine that others in the home network can name; link-local ones need a zone and are left out.</summary>
    public static IReadOnlyList<IPAddress> OwnOfThisMachine() =>
    [
        .. NetworkInterface.GetAllNetworkInterfaces().Where(card =>
            card.OperationalStatus == OperationalStatus.Up || card.NetworkInterfaceType == NetworkInterfaceType.Loopback)
            .SelectMany(card => card.GetIPProperties().UnicastAddresses).Select(each => each.Address)
            .Where(address => address.AddressFamily == AddressFamily.InterNetwork || !(address.IsIPv6LinkLocal || IPAddress.IsLoopback(address))),
    ];
}
