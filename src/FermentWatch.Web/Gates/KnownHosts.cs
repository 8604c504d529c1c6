using System.Net;

namespace FermentWatch.Web.Gates;

/// <summary>
/// By which names the pages may be called. A page elsewhere whose name was pointed at this machine (DNS rebinding) calls it by its own
/// name, which is none of these.
/// </summary>
public sealed class KnownHosts(WebOptions web, string machine)
{
    private const string AnyName = "*";

    /// <summary>Endings of home networks that no public name has (RFC 6762, RFC 8375; <c>lan</c>, <c>home</c> and <c>internal</c> by usage of
    /// routers).</summary>
    private static readonly string[] Home = [".local", ".lan", ".home", ".internal", ".home.arpa", ".localhost"];

    private readonly string[] _named = [.. WebOptions.Listed(web.AllowedHosts), machine,
        .. web.PublicUrl() is { } url ? [url.Host] : Array.Empty<string>()];

    /// <summary>Whether a request may call us so: an address, a name without a point, one of the home network, or one of the settings.</summary>
    /// <param name="host">The name without port; empty where the request gave none.</param>
    public bool Has(string host) =>
        host.Length == 0 || IPAddress.TryParse(host.Trim('[', ']'), out _) || !host.Contains('.', StringComparison.Ordinal)
        || Home.Any(ending => host.EndsWith(ending, StringComparison.OrdinalIgnoreCase)) || _named.Any(name => Fits(host, name));

    /// <summary>Whether a setting names hosts.</summary>
    public static bool IsPattern(string text) =>
        text == AnyName || Uri.CheckHostName(text.StartsWith("*.", StringComparison.Ordinal) ? text[2..] : text) != UriHostNameType.Unknown;

    private static bool Fits(string host, string name) =>
        name == AnyName || host.Equals(name, StringComparison.OrdinalIgnoreCase)
        || (name.StartsWith("*.", StringComparison.Ordinal) && host.EndsWith(name[1..], StringComparison.OrdinalIgnoreCase));
}
