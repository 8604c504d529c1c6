namespace FermentWatch.Kitchen.Notices;

/// <summary>The address a browser's push service gave it.</summary>
public static class PushEndpoint
{
    private const int LongestLetters = 2000;

    /// <summary>Whether a text can be one: https, or http on this machine, where nothing goes over a wire.</summary>
    public static bool IsOne(string? address) =>
        address?.Length <= LongestLetters && Uri.TryCreate(address, UriKind.Absolute, out Uri? uri) && uri.UserInfo.Length == 0
        && (uri.Scheme == Uri.UriSchemeHttps || (uri.Scheme == Uri.UriSchemeHttp && uri.IsLoopback));

    /// <summary>Scheme, host and a port that is not the usual one (RFC 6454, section 6.2): whose address it is, and not which browser's.</summary>
    /// <exception cref="UriFormatException">The address is none; <see cref="IsOne"/> says beforehand.</exception>
    public static string Origin(string address) => new Uri(address).GetComponents(UriComponents.SchemeAndServer, UriFormat.UriEscaped);
}
