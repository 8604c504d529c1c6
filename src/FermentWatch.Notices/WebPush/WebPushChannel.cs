using System.Buffers.Text;
using System.Globalization;
using System.Net;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Notices.Mail;
using Lib.Net.Http.WebPush;
using Lib.Net.Http.WebPush.Authentication;
using NodaTime;

namespace FermentWatch.Notices.WebPush;

/// <summary>
/// Sends notices to browsers by way of their push services, encrypted so that only the browser reads them (RFC 8030, 8291, 8292).
/// A repeat replaces: in the push service by its topic, on the phone by the notice's key.
/// </summary>
/// <param name="way">The way out, not following redirects.</param>
/// <param name="keys">The kitchen's key pair.</param>
/// <param name="links">The way to answer, which goes along.</param>
/// <param name="mail">The sender of letters, who is the contact where the pages have no https address.</param>
/// <param name="clock">The time of sending.</param>
public sealed class WebPushChannel(HttpMessageHandler way, PushKeys keys, INoticeLinks links, MailOptions mail, IClock clock) : INoticeChannel
{
    private const int LongestTimeToLiveSeconds = 28 * 24 * 60 * 60;

    private readonly PushServiceClient _push = new(new HttpClient(new HeadOnly(way)))
    {
        // Trying again is the outbox's business.
        AutoRetryAfter = false,
    };

    /// <summary>Longest wait for an answer, above zero. Default: 10 seconds.</summary>
    public TimeSpan Patience { get; init; } = TimeSpan.FromSeconds(10);

    public Channel Channel => Channel.WebPush;

    /// <inheritdoc/>
    public string? Missing => links.Root is { } root && (root.Scheme == Uri.UriSchemeHttps || root.IsLoopback) ? null
        : "Browsers take notices only from pages they reach by HTTPS: put a proxy with a certificate before the pages, and its address in the "
            + "setting Web:PublicAddress, such as https://kitchen.example.org.";

    /// <inheritdoc/>
    public string? WouldBeRight(string? address) =>
        PushEndpoint.IsOne(address) ? null : "an https address that a browser got from its push service would be right";

    /// <inheritdoc/>
    public async Task<DeliveryOutcome> SendAsync(Notice notice, NoticeRoute route, string? late, CancellationToken cancellationToken)
    {
        if (WouldBeRight(route.Address) is { } right)
            return DeliveryOutcome.Refused($"The address of this browser is none: {right}.");
        if (BrowserKeys.FromSecret(route.Secret) is not { } browser)
            return DeliveryOutcome.Refused("The keys of this browser are not whole: remove this way, and subscribe on the phone again.");
        string service = PushEndpoint.Origin(route.Address);
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        patience.CancelAfter(Patience);
        try
        {
            PushServiceClientException? answer = await PostAsync(notice, route.Address, browser, late, PushText.LongestBytes, patience.Token);
            if (answer?.StatusCode == HttpStatusCode.RequestEntityTooLarge)
                answer = await PostAsync(notice, route.Address, browser, late, PushText.LongestBytes / 2, patience.Token);
            return answer is null ? DeliveryOutcome.Delivered : PushAnswer.Outcome(answer, service, clock.GetCurrentInstant());
        }
        catch (HttpRequestException trouble)
        {
            return DeliveryOutcome.TryAgain($"{service} could not be reached: {trouble.Message}");
        }
        catch (OperationCanceledException) when (!cancellationToken.IsCancellationRequested)
        {
            return DeliveryOutcome.TryAgain(string.Create(CultureInfo.InvariantCulture,
                $"{service} did not answer within {Patience.TotalSeconds:0.#} seconds."));
        }
    }

    /// <summary>Posts a message of at most so many bytes; the answer, or null where it was taken.</summary>
    private async Task<PushServiceClientException?> PostAsync(
        Notice notice, string endpoint, BrowserKeys browser, string? late, int longestBytes, CancellationToken cancellationToken)
    {
        Instant now = clock.GetCurrentInstant();
        var subscription = new PushSubscription { Endpoint = endpoint };
        subscription.SetKey(PushEncryptionKeyName.P256DH, browser.P256dh);
        subscription.SetKey(PushEncryptionKeyName.Auth, browser.Auth);
        var message = new PushMessage(PushText.Of(notice, late, links, longestBytes))
        {
            TimeToLive = (int)Math.Clamp((notice.ExpiresAt - now).TotalSeconds, 0, LongestTimeToLiveSeconds),
            Topic = PushText.Topic(notice.Key),
            // What asks is for today and may wake a phone that saves its battery; what only tells may wait (RFC 8030, section 5.3).
            Urgency = notice.Question is null ? PushMessageUrgency.Normal : PushMessageUrgency.High,
        };
        PushKeyPair pair = await keys.PairAsync(cancellationToken);
        using var authentication = new VapidAuthentication(Base64Url.EncodeToString(pair.PublicKey), Base64Url.EncodeToString(pair.PrivateKey))
        {
            TokenCache = VapidToken.Sign(pair, PushEndpoint.Origin(endpoint), PushContact.Of(links.Root, mail), now),
        };
        try
        {
            await _push.RequestPushMessageDeliveryAsync(subscription, message, authentication, VapidAuthenticationScheme.Vapid, cancellationToken);
            return null;
        }
        catch (PushServiceClientException answer)
        {
            return answer;
        }
    }
}
