using MimeKit;

namespace FermentWatch.Notices.Mail;

/// <summary>Tells a mail address from other text.</summary>
public static class MailAddress
{
    /// <summary>Whether the text is one mail address with a domain (RFC 5321, section 4.1.2), with or without a name before it.</summary>
    public static bool IsOne(string? text) =>
        MailboxAddress.TryParse(text, out MailboxAddress? address) && address.Address.IndexOf('@') is > 0 and var at
        && Uri.CheckHostName(address.Domain) == UriHostNameType.Dns && at < address.Address.Length - 1;
}
