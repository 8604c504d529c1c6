using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text.Json;

namespace FermentWatch.Kitchen.Notices;

/// <summary>What a browser gave to encrypt for it (RFC 8291, sections 3.1 and 3.2).</summary>
/// <param name="P256dh">Its public key on the curve P-256, a point of 65 bytes without compression, as base64url.</param>
/// <param name="Auth">Its authentication secret, 16 bytes, as base64url.</param>
public sealed record BrowserKeys(string P256dh, string Auth)
{
    private const int PointBytes = 65, CoordinateBytes = 32, AuthBytes = 16;
    private const byte WithoutCompression = 0x04;

    /// <summary>Whether a text is a public key: 65 bytes, and a point that lies on the curve.</summary>
    public static bool IsPublicKey(string? text)
    {
        if (!HasBytes(text, PointBytes) || Base64Url.DecodeFromChars(text) is not [WithoutCompression, ..] point)
            return false;
        try
        {
            var parameters = new ECParameters
            {
                Curve = ECCurve.NamedCurves.nistP256,
                Q = new ECPoint { X = point[1..(1 + CoordinateBytes)], Y = point[(1 + CoordinateBytes)..] },
            };
            using var key = ECDiffieHellman.Create(parameters);
            return true;
        }
        catch (CryptographicException)
        {
            return false;
        }
    }

    /// <summary>Whether a text is an authentication secret.</summary>
    public static bool IsAuth(string? text) => HasBytes(text, AuthBytes);

    /// <summary>The keys as they are kept with a route.</summary>
    public string ToSecret() => JsonSerializer.Serialize(this);

    /// <summary>The keys kept with a route; null where they are not whole.</summary>
    public static BrowserKeys? FromSecret(string? secret)
    {
        try
        {
            return JsonSerializer.Deserialize<BrowserKeys>(secret ?? "null") is { } keys && IsPublicKey(keys.P256dh)
                && IsAuth(keys.Auth) ? keys : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private static bool HasBytes(string? text, int bytes) => text is not null && Base64Url.IsValid(text, out int length) && length == bytes;
}
