using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Unicode;
using FermentWatch.Kitchen.Notices;

namespace FermentWatch.Notices.WebPush;

/// <summary>What the pages' worker gets to show, as JSON.</summary>
internal static class PushText
{
    /// <summary>
    /// Bytes that every push service takes: 4096 of a message (RFC 8030, section 7.2), less 86 of its head and 17 that encryption adds,
    /// as it must be one record (RFC 8291, section 4).
    /// </summary>
    public const int LongestBytes = 4096 - 86 - 17;

    private const int TopicBytes = 24, LongestWordLetters = 40;

    private const string Ellipsis = "…";

    private static readonly JsonSerializerOptions Json = new()
    {
        Encoder = JavaScriptEncoder.Create(UnicodeRanges.All), DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    };

    /// <summary>The message; of a text that is too long the end is left out, and an ellipsis says so.</summary>
    /// <param name="notice">What is to be said.</param>
    /// <param name="late">How late it is; null when in time.</param>
    /// <param name="links">The ways to answer, of which the first, that for the whole round, goes along.</param>
    /// <param name="longestBytes">How long it may be in UTF-8, above zero; title, key and link are never cut.</param>
    public static string Of(Notice notice, string? late, INoticeLinks links, int longestBytes)
    {
        string? answer = notice.Question is null ? null : links.Of(notice)[0].Path;
        string title = late is null ? notice.Title : $"{notice.Title} ({late})";
        if (Write(notice.Body) is { } whole && Encoding.UTF8.GetByteCount(whole) <= longestBytes)
            return whole;
        int fits = 0, tooMany = notice.Body.Length;
        while (tooMany - fits > 1)
        {
            int middle = (fits + tooMany) / 2;
            if (Encoding.UTF8.GetByteCount(Write(notice.Body[..middle] + Ellipsis)) <= longestBytes)
                fits = middle;
            else
                tooMany = middle;
        }
        return Write(Ended(notice.Body, fits));

        string Write(string text) => JsonSerializer.Serialize(new { v = 1, key = notice.Key, title, text, answer }, Json);
    }

    /// <summary>A topic for the push service to replace a message by its repeat that it has not delivered yet: 32 letters (RFC 8030, section 5.4)
    /// that tell it nothing.</summary>
    public static string Topic(string key) => Base64Url.EncodeToString(SHA256.HashData(Encoding.UTF8.GetBytes(key)).AsSpan(0, TopicBytes));

    /// <summary>The first letters of a text up to the end of a word, with an ellipsis; nothing where there is no room for any.</summary>
    private static string Ended(string text, int letters)
    {
        if (letters == 0)
            return "";
        int word = text.LastIndexOfAny([' ', '\n'], letters);
        int end = word > letters - LongestWordLetters ? word : letters;
        if (end > 0 && char.IsHighSurrogate(text[end - 1]))
            end--;
        return text[..end].TrimEnd() + Ellipsis;
    }
}
