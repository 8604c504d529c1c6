using System.Buffers.Text;
using System.Security.Cryptography;
using FermentWatch.Kitchen.Notices;
using NodaTime;

namespace FermentWatch.Notices.WebPush;

/// <summary>The kitchen's key pair for push: made at its first use, and the same ever after.</summary>
public sealed class PushKeys(IPushKeyBook book, IClock clock) : IPushOffer
{
    private const byte WithoutCompression = 0x04;

    private PushKeyPair? _pair;

    /// <summary>The pair.</summary>
    public async Task<PushKeyPair> PairAsync(CancellationToken cancellationToken) =>
        _pair ??= await book.FindAsync(cancellationToken) ?? await book.KeepAsync(Make(clock.GetCurrentInstant()), cancellationToken);

    /// <inheritdoc/>
    public async Task<string> PublicKeyAsync(CancellationToken cancellationToken) =>
        Base64Url.EncodeToString((await PairAsync(cancellationToken)).PublicKey);

    private static PushKeyPair Make(Instant now)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        ECParameters made = key.ExportParameters(includePrivateParameters: true);
        return new PushKeyPair { PublicKey = [WithoutCompression, .. made.Q.X!, .. made.Q.Y!], PrivateKey = made.D!, MadeAt = now };
    }
}
