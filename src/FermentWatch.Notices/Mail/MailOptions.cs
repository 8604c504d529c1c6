using MimeKit;

namespace FermentWatch.Notices.Mail;

/// <summary>Settings of the way to the mail server that takes our letters.</summary>
public sealed class MailOptions
{
    /// <summary>Name or address of the server. Default: none, and no e-mail is sent.</summary>
    public string? Host { get; set; }

    /// <summary>Its port, 1 to 65535. Default: 587.</summary>
    public int Port { get; set; } = 587;

    /// <summary>How the connection is encrypted. Default: StartTls.</summary>
    public MailTls Tls { get; set; } = MailTls.StartTls;

    /// <summary>
    /// A PEM file with the server's own certificate or the authority that signed it, where no public one did. Default: none, and the
    /// authorities this machine knows are trusted.
    /// </summary>
    public string? CertificateFile { get; set; }

    /// <summary>Who signs in there. Default: nobody.</summary>
    public string? User { get; set; }

    /// <summary>The password of <see cref="User"/>.</summary>
    public string? Password { get; set; }

    /// <summary>The address letters come from, with or without a name: <c>Number Nine &lt;kitchen@example.org&gt;</c>. Needed with <see
    /// cref="Host"/>.</summary>
    public string? From { get; set; }

    /// <summary>How long one letter may take from the connection to the server's last word, 5 to 90 seconds. Default: 30 seconds.</summary>
    public TimeSpan Timeout { get; set; } = TimeSpan.FromSeconds(30);

    /// <summary>Everything wrong with the settings: which, what came, what would be right.</summary>
    public IEnumerable<string> Errors()
    {
        if (Port is < 1 or > 65_535)
            yield return $"Port is {Port}; a number from 1 to 65535 belongs here.";
        if (Timeout < TimeSpan.FromSeconds(5) || Timeout > TimeSpan.FromSeconds(90))
            yield return $"Timeout is {Timeout}; a time from 00:00:05 to 00:01:30 belongs here.";
        if (!string.IsNullOrEmpty(Host) && Uri.CheckHostName(Host) == UriHostNameType.Unknown)
            yield return $"Host is '{Host}'; the name or address of a mail server belongs here, without a port.";
        if (!string.IsNullOrEmpty(From) && !MailAddress.IsOne(From))
            yield return $"From is '{From}'; a mail address belongs here, like kitchen@example.org.";
        if (!string.IsNullOrEmpty(Host) && string.IsNullOrEmpty(From))
            yield return $"From is not set and Host is '{Host}'; the address letters come from belongs here.";
        if (!string.IsNullOrEmpty(CertificateFile) && !File.Exists(CertificateFile))
            yield return $"CertificateFile is '{CertificateFile}', where there is no file; a PEM file belongs here.";
        if (string.IsNullOrEmpty(User) != string.IsNullOrEmpty(Password))
            yield return "User and Password go together; one of them is set and the other is not.";
    }

    /// <summary>The sender, read.</summary>
    /// <exception cref="ParseException">It is none; <see cref="Errors"/> says beforehand.</exception>
    internal MailboxAddress Sender() => MailboxAddress.Parse(From!);
}

/// <summary>How the connection to the mail server is encrypted.</summary>
public enum MailTls
{
    /// <summary>It begins plain and must be raised to TLS (RFC 3207); usual on port 587.</summary>
    StartTls = 1,

    /// <summary>TLS from the first byte (RFC 8314); usual on port 465.</summary>
    Implicit = 2,

    /// <summary>None: for a server on this machine only.</summary>
    None = 3,
}
