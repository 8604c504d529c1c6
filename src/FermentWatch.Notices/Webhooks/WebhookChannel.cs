using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using System.Text;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Notices.Outside;
using NodaTime;

namespace FermentWatch.Notices.Webhooks;

/// <summary>Posts notices as signed JSON. A receiver drops a repeat by the <c>webhook-id</c>, which is the notice's key.</summary>
/// <param name="http">The way out.</param>
/// <param name="links">The ways to answer, which the receiver may offer.</param>
/// <param name="clock">The time of sending, which is signed.</param>
public sealed class WebhookChannel(HttpClient http, INoticeLinks links, IClock clock) : INoticeChannel
{
    /// <summary>Longest wait for an answer, above zero. Default: 10 seconds.</summary>
    public TimeSpan Patience { get; init; } = TimeSpan.FromSeconds(10);

    public Channel Channel => Channel.Webhook;

    /// <inheritdoc/>
    public string? WouldBeRight(string? address) => Uri.TryCreate(address, UriKind.Absolute, out Uri? uri) && uri.Scheme is "http" or "https"
        && (!IPAddress.TryParse(uri.DnsSafeHost, out IPAddress? ip) || WayOut.MayCall(ip))
        ? null : "a web address such as https://push.example.net/kitchen would be right";

    /// <inheritdoc/>
    public async Task<DeliveryOutcome> SendAsync(Notice notice, NoticeRoute route, string? late, CancellationToken cancellationToken)
    {
        using var waiting = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        waiting.CancelAfter(Patience);
        try
        {
            using HttpRequestMessage request = Request(notice, route, late);
            using HttpResponseMessage answer = await http.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, waiting.Token);
            return Outcome(answer);
        }
        catch (HttpRequestException trouble)
        {
            return DeliveryOutcome.TryAgain($"{Host(route)} could not be reached: {trouble.Message}");
        }
        catch (OperationCanceledException) when (!cancellationToken.IsCancellationRequested)
        {
            return DeliveryOutcome.TryAgain(string.Create(CultureInfo.InvariantCulture,
                $"{Host(route)} did not answer within {Patience.TotalSeconds:0.#} seconds."));
        }
    }

    /// <summary>What is shown of an address in words that everybody may read: names, paths and queries hold keys.</summary>
    private static string Host(NoticeRoute route) =>
        Uri.TryCreate(route.Address, UriKind.Absolute, out Uri? uri) ? uri.GetComponents(UriComponents.SchemeAndServer, UriFormat.UriEscaped)
            : "the address";

    private HttpRequestMessage Request(Notice notice, NoticeRoute route, string? late)
    {
        Instant now = clock.GetCurrentInstant();
        byte[] body = NoticeJson.Of(notice, late, links);
        var request = new HttpRequestMessage(HttpMethod.Post, route.Address) { Content = new ByteArrayContent(body) };
        request.Content.Headers.ContentType = new("application/json");
        request.Headers.Add("webhook-id", notice.Key);
        request.Headers.Add("webhook-timestamp", now.ToUnixTimeSeconds().ToString(CultureInfo.InvariantCulture));
        if (route.Secret is { Length: > 0 } secret)
            request.Headers.Add("webhook-signature", WebhookSignature.Of(secret, notice.Key, now, body));
        return request;
    }

    private static DeliveryOutcome Outcome(HttpResponseMessage answer) => answer switch
    {
        { IsSuccessStatusCode: true } => DeliveryOutcome.Delivered,
        { StatusCode: HttpStatusCode.Gone } => DeliveryOutcome.Refused("The receiver says that it is gone (410)."),
        _ => DeliveryOutcome.TryAgain(string.Create(CultureInfo.InvariantCulture, $"The receiver answered {(int)answer.StatusCode}.")),
    };
}

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
