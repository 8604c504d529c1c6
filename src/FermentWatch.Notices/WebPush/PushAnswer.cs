using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using FermentWatch.Kitchen.Notices;
using Lib.Net.Http.WebPush;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Notices.WebPush;

/// <summary>What an answer of a push service means for a notice (RFC 8030, sections 5 to 8).</summary>
internal static class PushAnswer
{
    private const string Again = "remove this way, and press “Send notices to this phone” on the notices page of that phone again";

    private static readonly Duration LongestWait = Duration.FromDays(1);

    /// <summary>The outcome of an answer that was not 201.</summary>
    /// <param name="answer">The answer, as the library throws it.</param>
    /// <param name="service">Origin of the push service, for people.</param>
    /// <param name="now">The present, for a Retry-After that names a time.</param>
    public static DeliveryOutcome Outcome(PushServiceClientException answer, string service, Instant now)
    {
        int code = (int)answer.StatusCode;
        return answer.StatusCode switch
        {
            >= HttpStatusCode.OK and < HttpStatusCode.MultipleChoices => DeliveryOutcome.Delivered,
            HttpStatusCode.NotFound or HttpStatusCode.Gone =>
                DeliveryOutcome.Refused(Say($"This browser takes no notices any more ({code}): {Again}.")),
            HttpStatusCode.RequestEntityTooLarge =>
                DeliveryOutcome.Refused(Say($"{service} takes no message of this length ({code}), not even cut short.")),
            HttpStatusCode.Unauthorized or HttpStatusCode.Forbidden => DeliveryOutcome.TryAgain(
                Say($"{service} does not take our signature ({code}). See that the clock of this machine is right; if it is, {Again}.")),
            _ => DeliveryOutcome.TryAgain(Say($"{service} answered {code}."), Wait(answer.Headers?.RetryAfter, now)),
        };
    }

    private static Duration? Wait(RetryConditionHeaderValue? asked, Instant now)
    {
        Duration? wait = asked?.Delta is { } delta ? Duration.FromTimeSpan(delta) : asked?.Date is { } date ? date.ToInstant() - now : null;
        return wait is { } some ? Duration.Max(Duration.Zero, Duration.Min(some, LongestWait)) : null;
    }

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

/// <summary>Lets go of the body of every answer: a push service says all it has to say before it, and one that never ends must not be
/// read.</summary>
internal sealed class HeadOnly(HttpMessageHandler way) : DelegatingHandler(way)
{
    protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
    {
        HttpResponseMessage answer = await base.SendAsync(request, cancellationToken);
        answer.Content.Dispose();
        answer.Content = new ByteArrayContent([]);
        return answer;
    }
}
