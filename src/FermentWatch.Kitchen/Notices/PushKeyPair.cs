using NodaTime;

namespace FermentWatch.Kitchen.Notices;

/// <summary>
/// The key pair on the curve P-256 by which push services know this kitchen again (RFC 8292). Browsers subscribe to the public key:
/// with another pair nobody who has subscribed can be told any more.
/// </summary>
public sealed class PushKeyPair
{
    /// <summary>The public key as a point without compression, 65 bytes from 0x04 on.</summary>
    public required byte[] PublicKey { get; init; }

    /// <summary>The private key, 32 bytes, the highest first. Leaves the records for signing only.</summary>
    public required byte[] PrivateKey { get; init; }

    /// <summary>When it was made.</summary>
    public required Instant MadeAt { get; init; }
}

/// <summary>Where the one key pair for push is kept.</summary>
public interface IPushKeyBook
{
    /// <summary>The pair that is kept, or null.</summary>
    Task<PushKeyPair?> FindAsync(CancellationToken cancellationToken);

    /// <summary>Keeps a pair where there is none yet, and gives the one that is kept: of several made at once the first stays.</summary>
    Task<PushKeyPair> KeepAsync(PushKeyPair made, CancellationToken cancellationToken);
}

/// <summary>What a browser is shown so that it lets us send to it.</summary>
public interface IPushOffer
{
    /// <summary>The public key as browsers want it for a subscription: base64url.</summary>
    Task<string> PublicKeyAsync(CancellationToken cancellationToken);
}

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
