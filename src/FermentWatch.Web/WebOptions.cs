using System.Net;
using FermentWatch.Web.Gates;

namespace FermentWatch.Web;

/// <summary>Where the pages and the API are served.</summary>
public sealed class WebOptions
{
    /// <summary>The address it listens on. Default: this machine only. 0.0.0.0 lets phones on the home network in.</summary>
    public string Address { get; set; } = "127.0.0.1";

    /// <summary>The port it listens on, 0 to 65535; 0 lets the system choose. Default: 8340.</summary>
    public int Port { get; set; } = 8340;

    /// <summary>
    /// The address people reach the pages by, for links in letters: <c>http://kitchen.local:8340</c>. Default: none, and letters carry
    /// no links. Notices on phones need an https one.
    /// </summary>
    public string? PublicAddress { get; set; }

    /// <summary>
    /// Addresses and networks of proxies whose word on client, scheme and host is believed, parted by commas: <c>127.0.0.1, 10.0.0.0/8</c>.
    /// Default: none, and what anybody forwards is left unread.
    /// </summary>
    public string TrustedProxies { get; set; } = "";

    /// <summary>
    /// Names by which the pages may be called besides this machine's own, addresses, names of the home network (<see cref="KnownHosts"/>)
    /// and that of <see cref="PublicAddress"/>, parted by commas; <c>*.example.org</c> takes every name below, <c>*</c> every name. Default: none.
    /// </summary>
    public string AllowedHosts { get; set; } = "";

    /// <summary>The path under which a proxy serves the pages, such as <c>/kitchen</c>. Default: none, they begin at the host's first
    /// page.</summary>
    public string PathBase { get; set; } = "";

    /// <summary><see cref="PathBase"/> as it stands before the paths of the pages: empty, or with a slash at its begin and none at its
    /// end.</summary>
    public string SubPath => PathBase.Trim('/') is { Length: > 0 } path ? $"/{path}" : "";

    /// <summary>
    /// Most pages made at the same time, 0 to 1000; the others wait. Default: 0, which is half of the processors, at least one: readings
    /// that come in have the other half.
    /// </summary>
    public int MaxPagesAtOnce { get; set; }

    /// <summary>Most pages that wait to be made, 1 to 10000; who comes then is asked to come again. Default: 100.</summary>
    public int MaxPagesWaiting { get; set; } = 100;

    /// <summary>Everything wrong with the settings: which, what came, what would be right.</summary>
    public IEnumerable<string> Errors()
    {
        if (!IPAddress.TryParse(Address, out _))
            yield return $"Address is '{Address}'; an IP address belongs here, like 127.0.0.1 or 0.0.0.0.";
        if (Port is < 0 or > 65_535)
            yield return $"Port is {Port}; a number from 0 to 65535 belongs here.";
        if (MaxPagesAtOnce is < 0 or > 1_000)
            yield return $"MaxPagesAtOnce is {MaxPagesAtOnce}; a number from 0 to 1000 belongs here.";
        if (MaxPagesWaiting is < 1 or > 10_000)
            yield return $"MaxPagesWaiting is {MaxPagesWaiting}; a number from 1 to 10000 belongs here.";
        if (!string.IsNullOrEmpty(PublicAddress) && PublicUrl() is null)
            yield return $"PublicAddress is '{PublicAddress}'; a web address without a path belongs here, like https://kitchen.example.org.";
        foreach (string proxy in Listed(TrustedProxies).Where(proxy => !IPAddress.TryParse(proxy, out _) && !IPNetwork.TryParse(proxy, out _)))
            yield return $"TrustedProxies holds '{proxy}'; an address or a network belongs there, like 127.0.0.1 or 192.168.1.0/24.";
        foreach (string host in Listed(AllowedHosts).Where(host => !KnownHosts.IsPattern(host)))
            yield return $"AllowedHosts holds '{host}'; a name without scheme and port belongs there, like kitchen.example.org, *.example.org, or * "
                + "for every name.";
        if (PathBase.Length > 0 && !IsPath(PathBase))
            yield return $"PathBase is '{PathBase}'; a path of letters, digits, '-', '_', '.' and '/' belongs here, like /kitchen.";
    }

    /// <summary>The address by which this machine itself reaches the service.</summary>
    /// <exception cref="FormatException">The address is none; <see cref="Errors"/> says beforehand.</exception>
    public Uri OwnUrl()
    {
        IPAddress listens = IPAddress.Parse(Address);
        IPAddress reached = listens.Equals(IPAddress.Any) ? IPAddress.Loopback
            : listens.Equals(IPAddress.IPv6Any) ? IPAddress.IPv6Loopback : listens;
        return new UriBuilder(Uri.UriSchemeHttp, reached.ToString(), Port).Uri;
    }

    /// <summary>The first page as people reach it, with a slash at its end; null where <see cref="PublicAddress"/> is not set or none.</summary>
    public Uri? PublicRoot() => PublicUrl() is { } url ? new Uri(url, $"{SubPath}/") : null;

    /// <summary><see cref="PublicAddress"/>, read; null where it is not set or none.</summary>
    public Uri? PublicUrl() =>
        Uri.TryCreate(PublicAddress, UriKind.Absolute, out Uri? url) && url.Scheme is "http" or "https" && url.PathAndQuery == "/"
            && url.Fragment.Length == 0 && url.UserInfo.Length == 0
            ? url : null;

    /// <summary>The address it listens on, as a URL.</summary>
    /// <exception cref="FormatException">The address is none; <see cref="Errors"/> says beforehand.</exception>
    public Uri ListenUrl() => new UriBuilder(Uri.UriSchemeHttp, IPAddress.Parse(Address).ToString(), Port).Uri;

    /// <summary>The trusted proxies that are networks, and those that are one address.</summary>
    public (IReadOnlyList<IPNetwork> Networks, IReadOnlyList<IPAddress> Addresses) Proxies() => (
        [.. Listed(TrustedProxies).Where(proxy => !IPAddress.TryParse(proxy, out _)).Select(proxy => IPNetwork.Parse(proxy))],
        [.. Listed(TrustedProxies).Select(proxy => IPAddress.TryParse(proxy, out IPAddress? address) ? address : null).OfType<IPAddress>()]);

    /// <summary>Entries of a setting that holds several, parted by commas.</summary>
    internal static string[] Listed(string setting) => setting.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    private static bool IsPath(string path) =>
        path.Trim('/') is { Length: > 0 } inner
            && inner.Split('/').All(part => part.Trim('.').Length > 0
            && part.All(letter => char.IsAsciiLetterOrDigit(letter) || letter is '-' or '_' or '.'));
}
