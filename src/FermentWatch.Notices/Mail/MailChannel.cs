using System.Globalization;
using System.Security.Cryptography.X509Certificates;
using FermentWatch.Kitchen.Notices;
using MailKit.Net.Smtp;
using MailKit.Security;
using MimeKit;
using NodaTime;

namespace FermentWatch.Notices.Mail;

/// <summary>Sends notices as letters through the household's own mail server. A receiver knows a repeat by its Message-ID.</summary>
public sealed class MailChannel(MailOptions options, INoticeLinks links, IClock clock) : INoticeChannel
{
    private readonly MailLetter _letter = new(links);

    public Channel Channel => Channel.Email;

    /// <inheritdoc/>
    public string? Missing => string.IsNullOrEmpty(options.Host)
        ? "No mail server is known: set Mail:Host and Mail:From."
        : null;

    private string Server => string.Create(CultureInfo.InvariantCulture, $"{options.Host}:{options.Port}");

    /// <inheritdoc/>
    public string? WouldBeRight(string? address) => MailAddress.IsOne(address) ? null : "a mail address such as mira@example.org would be right";

    /// <inheritdoc/>
    public async Task<DeliveryOutcome> SendAsync(Notice notice, NoticeRoute route, string? late, CancellationToken cancellationToken)
    {
        if (Missing is { } missing)
            return DeliveryOutcome.TryAgain(missing);
        if (!MailboxAddress.TryParse(route.Address, out MailboxAddress? to))
            return DeliveryOutcome.Refused($"{route.Address} is no mail address.");
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        patience.CancelAfter(options.Timeout);
        try
        {
            await PostAsync(_letter.Write(notice, late, options.Sender(), to, clock.GetCurrentInstant()), patience.Token);
            return DeliveryOutcome.Delivered;
        }
        catch (Exception trouble) when (MailTrouble.Outcome(trouble, Server, to.Address) is not null)
        {
            return MailTrouble.Outcome(trouble, Server, to.Address)!;
        }
        catch (Exception trouble) when (trouble is OperationCanceledException or TimeoutException && !cancellationToken.IsCancellationRequested)
        {
            return DeliveryOutcome.TryAgain(string.Create(CultureInfo.InvariantCulture,
                $"{Server} did not answer within {options.Timeout.TotalSeconds:0} seconds."));
        }
    }

    private async Task PostAsync(MimeMessage letter, CancellationToken cancellationToken)
    {
        using var smtp = new SmtpClient { LocalDomain = options.Sender().Domain, Timeout = (int)options.Timeout.TotalMilliseconds };
        if (!string.IsNullOrEmpty(options.CertificateFile))
            smtp.ServerCertificateValidationCallback = new OwnAuthority(Trusted(options.CertificateFile)).IsTrusted;
        SecureSocketOptions security = options.Tls switch
        {
            MailTls.Implicit => SecureSocketOptions.SslOnConnect,
            MailTls.None => SecureSocketOptions.None,
            _ => SecureSocketOptions.StartTls,
        };
        await smtp.ConnectAsync(options.Host!, options.Port, security, cancellationToken);
        if (!string.IsNullOrEmpty(options.User))
            await smtp.AuthenticateAsync(options.User, options.Password!, cancellationToken);
        await smtp.SendAsync(letter, cancellationToken);
        await QuitAsync(smtp, cancellationToken);
    }

    private static X509Certificate2Collection Trusted(string file)
    {
        var certificates = new X509Certificate2Collection();
        certificates.ImportFromPemFile(file);
        return certificates;
    }

    /// <summary>Parting politely; the letter is with the server already, so that trouble here must not send it again.</summary>
    private static async Task QuitAsync(SmtpClient smtp, CancellationToken cancellationToken)
    {
        try
        {
            await smtp.DisconnectAsync(quit: true, cancellationToken);
        }
        catch (Exception trouble) when (trouble is IOException or OperationCanceledException or MailKit.ProtocolException or SmtpCommandException)
        {
            // Taken is taken.
        }
    }
}
