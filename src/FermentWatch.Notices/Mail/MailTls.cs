namespace FermentWatch.Notices.Mail;

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
