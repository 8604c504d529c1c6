using System.Globalization;
using System.Net.Sockets;
using System.Security.Cryptography;
using FermentWatch.Kitchen.Notices;
using MailKit;
using MailKit.Net.Smtp;
using MailKit.Security;

namespace FermentWatch.Notices.Mail;

/// <summary>
/// What a failure means for a letter. Replies that begin with 4 are for now, with 5 for good (RFC 5321, section 4.2.1); for good
/// for this letter only where they speak of it or of its receiver: a wrong password or sender can be mended in the settings.
/// </summary>
internal static class MailTrouble
{
    private const int FirstPermanent = 500;

    /// <summary>The outcome of a failure; null where it is none of the world's but ours.</summary>
    /// <param name="trouble">What was thrown.</param>
    /// <param name="server">The server, for the words.</param>
    /// <param name="to">The receiver, for the words.</param>
    public static DeliveryOutcome? Outcome(Exception trouble, string server, string to) => trouble switch
    {
        SmtpCommandException refused => Refusal(refused, server, to),
        AuthenticationException =>
            DeliveryOutcome.TryAgain($"{server} does not let us in: Mail:User or Mail:Password is wrong ({Line(trouble.Message)})."),
        CryptographicException => DeliveryOutcome.TryAgain($"Mail:CertificateFile cannot be read: {Line(trouble.Message)}"),
        SslHandshakeException => DeliveryOutcome.TryAgain($"The encrypted connection to {server} failed: {Line(trouble.Message)}"),
        NotSupportedException => DeliveryOutcome.TryAgain($"{server} cannot do what Mail:Tls or Mail:User asks for: {Line(trouble.Message)}"),
        SocketException => DeliveryOutcome.TryAgain($"{server} could not be reached: {Line(trouble.Message)}"),
        ProtocolException or ServiceNotConnectedException or ServiceNotAuthenticatedException or IOException =>
            DeliveryOutcome.TryAgain($"{server} broke off: {Line(trouble.Message)}"),
        _ => null,
    };

    private static DeliveryOutcome Refusal(SmtpCommandException refused, string server, string to)
    {
        bool permanent = (int)refused.StatusCode >= FirstPermanent;
        string said = string.Create(CultureInfo.InvariantCulture, $"{(int)refused.StatusCode} {Line(refused.Message)}");
        return refused.ErrorCode switch
        {
            SmtpErrorCode.RecipientNotAccepted when permanent => DeliveryOutcome.Refused($"{server} knows no {to}: {said}"),
            SmtpErrorCode.RecipientNotAccepted => DeliveryOutcome.TryAgain($"{server} does not take letters for {to} just now: {said}"),
            SmtpErrorCode.SenderNotAccepted => DeliveryOutcome.TryAgain($"{server} does not take letters from Mail:From: {said}"),
            SmtpErrorCode.MessageNotAccepted when permanent => DeliveryOutcome.Refused($"{server} does not take the letter: {said}"),
            _ => DeliveryOutcome.TryAgain($"{server} says: {said}"),
        };
    }

    private static string Line(string message) => message.ReplaceLineEndings(" ").Trim();
}
