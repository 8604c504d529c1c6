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
