using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using NodaTime;

namespace FermentWatch.Notices.Webhooks;

/// <summary>
/// Signature of a webhook after the open Standard Webhooks specification 1.0 (from memory): the headers <c>webhook-id</c>, <c>webhook-timestamp</c>
/// (Unix seconds) and <c>webhook-signature</c>, which is <c>v1,</c> and the Base64 of the HMAC-SHA256 of id, timestamp and
/// body with points between.
/// </summary>
public static class WebhookSignature
{
    /// <summary>The value of the signature header.</summary>
    /// <param name="secret">Shared key, as text; its UTF-8 bytes are the key.</param>
    /// <param name="id">Value of <c>webhook-id</c>.</param>
    /// <param name="at">Time of sending.</param>
    /// <param name="body">The body, byte for byte.</param>
    public static string Of(string secret, string id, Instant at, ReadOnlySpan<byte> body)
    {
        byte[] head = Encoding.UTF8.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{id}.{at.ToUnixTimeSeconds()}."));
        using var mac = IncrementalHash.CreateHMAC(HashAlgorithmName.SHA256, Encoding.UTF8.GetBytes(secret));
        mac.AppendData(head);
        mac.AppendData(body);
        return "v1," + Convert.ToBase64String(mac.GetHashAndReset());
    }
}
