using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using System.Text;
using FermentWatch.Kitchen.Notices;
using MimeKit;
using NodaTime;

namespace FermentWatch.Notices.Mail;

/// <summary>
/// A notice as a letter: the same words as plain text and as HTML, with links that answer. Nothing in it is fetched from elsewhere.
/// </summary>
internal sealed class MailLetter(INoticeLinks links)
{
    private const string Button = "display:inline-block;padding:14px 22px;border-radius:9px;font-weight:bold;text-decoration:none;";
    private const string Filled = Button + "background:#17594a;color:#ffffff;";
    private const string Outlined = Button + "border:2px solid #17594a;color:#17594a;";

    /// <summary>Writes the letter. The same notice gives the same Message-ID, so that a repeat is the same letter.</summary>
    public MimeMessage Write(Notice notice, string? late, MailboxAddress from, MailboxAddress to, Instant now)
    {
        string subject = late is null ? notice.Title : $"{notice.Title} ({late})";
        var letter = new MimeMessage
        {
            Subject = subject, Date = now.ToDateTimeOffset(), MessageId = MessageId(notice.Key, from.Domain),
            Body = new MultipartAlternative(
                new TextPart("plain") { Text = Plain(notice) }, new TextPart("html") { Text = Html(notice, subject) }),
        };
        letter.From.Add(from);
        letter.To.Add(new MailboxAddress(string.IsNullOrEmpty(to.Name) ? notice.Person : to.Name, to.Address));
        // Machines that are away must not answer it: RFC 3834, section 5.
        letter.Headers.Add("Auto-Submitted", "auto-generated");
        return letter;
    }

    /// <summary>An identifier that depends on the key only (RFC 5322, section 3.6.4): the key itself may hold a person's name.</summary>
    public static string MessageId(string key, string domain) =>
        $"{Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(key)).AsSpan(0, 16))}@{domain}";

    private string Plain(Notice notice)
    {
        var text = new StringBuilder(notice.Body);
        if (links.Root is not { } root)
            return text.Append('\n').ToString();
        foreach (AnswerLink link in links.Of(notice))
            text.Append(CultureInfo.InvariantCulture, $"\n\n{Words(link)}: {new Uri(root, link.Path)}");
        text.Append(CultureInfo.InvariantCulture, $"\n\n{PageWords(notice)}: {root}");
        if (notice.Question is not null)
            text.Append("\n\n").Append(Footnote(notice.Person));
        return text.Append('\n').ToString();
    }

    private string Html(Notice notice, string subject)
    {
        var html = new StringBuilder("<!DOCTYPE html><html lang=\"en\"><head><meta charset=\"utf-8\"><title>")
            .Append(WebUtility.HtmlEncode(subject))
            .Append("</title></head><body style=\"font-family:system-ui,sans-serif;font-size:18px;line-height:1.45;max-width:36rem;margin:0 "
                + "auto;padding:12px\">")
            .Append("<h1 style=\"font-size:22px\">").Append(WebUtility.HtmlEncode(subject)).Append("</h1>");
        foreach (string line in notice.Body.Split('\n'))
            html.Append("<p style=\"margin:0 0 8px\">").Append(WebUtility.HtmlEncode(line)).Append("</p>");
        if (links.Root is { } root)
        {
            foreach (AnswerLink link in links.Of(notice))
                AddButton(html, new Uri(root, link.Path), Words(link), link.Shelf is null ? Filled : Outlined);
            AddButton(html, root, PageWords(notice), Outlined);
            if (notice.Question is not null)
                html.Append("<p style=\"font-size:15px\">").Append(Footnote(WebUtility.HtmlEncode(notice.Person)));
        }
        return html.Append("</body></html>").ToString();
    }

    private static void AddButton(StringBuilder html, Uri address, string words, string style) => html
        .Append("<p style=\"margin:14px 0\"><a style=\"").Append(style).Append("\" href=\"").Append(WebUtility.HtmlEncode(address.ToString()))
        .Append("\">").Append(WebUtility.HtmlEncode(words)).Append("</a></p>");

    private static string Words(AnswerLink link) => link.Shelf is null ? "All well" : $"All well: {link.Shelf}";

    private static string PageWords(Notice notice) => notice.Question is null ? "Open the kitchen" : "Something is wrong, or more to enter";

    private static string Footnote(string person) =>
        $"A link opens a page with two buttons, all well and later, and answers for {person} until the day is over. Do not pass it on.";
}

/// <summary>Tells a mail address from other text.</summary>
public static class MailAddress
{
    /// <summary>Whether the text is one mail address with a domain (RFC 5321, section 4.1.2), with or without a name before it.</summary>
    public static bool IsOne(string? text) =>
        MailboxAddress.TryParse(text, out MailboxAddress? address) && address.Address.IndexOf('@') is > 0 and var at
        && Uri.CheckHostName(address.Domain) == UriHostNameType.Dns && at < address.Address.Length - 1;
}
