using FermentWatch.Notices.Mail;

namespace FermentWatch.Notices.WebPush;

/// <summary>Where the people of a push service reach those who send (RFC 8292, section 2.1).</summary>
internal static class PushContact
{
    /// <summary>Nobody's address, in a domain that never is one (RFC 2606, section 2): a kitchen that only this machine reaches.</summary>
    public const string Nobody = "mailto:kitchen@fermentwatch.invalid";

    /// <summary>The address of the pages where it is https, else the sender of letters, else nobody's.</summary>
    public static string Of(Uri? root, MailOptions mail) => root?.Scheme == Uri.UriSchemeHttps ? root.GetLeftPart(UriPartial.Authority)
        : string.IsNullOrEmpty(mail.From) ? Nobody : $"mailto:{mail.Sender().Address}";
}
