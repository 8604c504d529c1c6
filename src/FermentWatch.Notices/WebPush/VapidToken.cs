using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Notices.Mail;
using Lib.Net.Http.WebPush.Authentication;
using NodaTime;

namespace FermentWatch.Notices.WebPush;

/// <summary>
/// A signed token that says who sends (RFC 8292, section 2), handed to the library as if it had been kept by it. The library's own
/// takes the time from the machine and leaves the port out of the endpoint's origin.
/// </summary>
internal sealed class VapidToken(string token) : IVapidTokenCache
{
    private const int CoordinateBytes = 32;

    private static readonly Duration Holds = Duration.FromHours(12);
    private static readonly string Header = Base64Url.EncodeToString("""{"typ":"JWT","alg":"ES256"}"""u8);

    /// <summary>Signs one.</summary>
    /// <param name="pair">The kitchen's pair.</param>
    /// <param name="origin">Origin of the endpoint.</param>
    /// <param name="contact">Where the push service's people reach ours, a mailto or https address.</param>
    /// <param name="now">The present; the token holds for 12 hours, of the 24 that are allowed.</param>
    public static VapidToken Sign(PushKeyPair pair, string origin, string contact, Instant now)
    {
        byte[] claims = JsonSerializer.SerializeToUtf8Bytes(new { aud = origin, exp = (now + Holds).ToUnixTimeSeconds(), sub = contact });
        string signed = $"{Header}.{Base64Url.EncodeToString(claims)}";
        using var key = ECDsa.Create(new ECParameters
        {
            Curve = ECCurve.NamedCurves.nistP256, D = pair.PrivateKey,
            Q = new ECPoint { X = pair.PublicKey[1..(1 + CoordinateBytes)], Y = pair.PublicKey[(1 + CoordinateBytes)..] },
        });
        return new VapidToken($"{signed}.{Base64Url.EncodeToString(key.SignData(Encoding.ASCII.GetBytes(signed), HashAlgorithmName.SHA256))}");
    }

    public string Get(string audience) => token;

    public void Put(string audience, DateTimeOffset expiration, string token)
    {
        // There is one already.
    }
}

/// <summary>Where the people of a push service reach those who send (RFC 8292, section 2.1).</summary>
internal static class PushContact
{
    /// <summary>Nobody's address, in a domain that never is one (RFC 2606, section 2): a kitchen that only this machine reaches.</summary>
    public const string Nobody = "mailto:kitchen@fermentwatch.invalid";

    /// <summary>The address of the pages where it is https, else the sender of letters, else nobody's.</summary>
    public static string Of(Uri? root, MailOptions mail) => root?.Scheme == Uri.UriSchemeHttps ? root.GetLeftPart(UriPartial.Authority)
        : string.IsNullOrEmpty(mail.From) ? Nobody : $"mailto:{mail.Sender().Address}";
}

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
