using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;

namespace FermentWatch.Notices.Tests.WebPush;

/// <summary>
/// The Authorization of a push message, read and verified as a push service does it: RFC 8292 (M. Thomson, P. Beverloo, "Voluntary
/// Application Server Identification (VAPID) for Web Push", 2017, sections 2 and 3) with RFC 7515's compact form.
/// </summary>
internal sealed record VapidHeader(string Algorithm, string Audience, long ExpiresAtSeconds, string Subject, string Key)
{
    /// <summary>Reads one.</summary>
    /// <exception cref="CryptographicException">Its signature was not made with the key it names.</exception>
    public static VapidHeader Verify(string header)
    {
        Assert.StartsWith("vapid ", header, StringComparison.Ordinal);
        var fields = header["vapid ".Length..].Split(',').Select(field => field.Trim().Split('=', 2))
            .ToDictionary(field => field[0], field => field[1]);
        string[] parts = fields["t"].Split('.');
        Assert.Equal(3, parts.Length);
        byte[] point = Base64Url.DecodeFromChars(fields["k"]);
        Assert.Equal((65, 4), (point.Length, point[0]));
        using var key = ECDsa.Create(
            new ECParameters { Curve = ECCurve.NamedCurves.nistP256, Q = new ECPoint { X = point[1..33], Y = point[33..] } });
        byte[] signature = Base64Url.DecodeFromChars(parts[2]);
        if (!key.VerifyData(Encoding.ASCII.GetBytes($"{parts[0]}.{parts[1]}"), signature, HashAlgorithmName.SHA256))
            throw new CryptographicException("The signature is not of the key that the header names.");
        JsonElement head = Json(parts[0]), claims = Json(parts[1]);
        return new VapidHeader(
            head.GetProperty("alg").GetString()!, claims.GetProperty("aud").GetString()!, claims.GetProperty("exp").GetInt64(),
            claims.GetProperty("sub").GetString()!, fields["k"]);
    }

    private static JsonElement Json(string part) => JsonDocument.Parse(Base64Url.DecodeFromChars(part)).RootElement;
}
