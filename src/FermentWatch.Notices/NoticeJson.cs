using System.Text.Json;
using FermentWatch.Kitchen.Notices;

namespace FermentWatch.Notices;

/// <summary>The JSON of a notice, for any push service; changed only by adding fields.</summary>
public static class NoticeJson
{
    /// <summary>UTF-8 bytes of the body.</summary>
    /// <param name="notice">What is to be said.</param>
    /// <param name="late">How late it is; null when in time.</param>
    /// <param name="links">The ways to answer; null leaves them out.</param>
    public static byte[] Of(Notice notice, string? late, INoticeLinks? links = null) => JsonSerializer.SerializeToUtf8Bytes(new
    {
        v = 1,
        key = notice.Key,
        person = notice.Person,
        title = late is null ? notice.Title : $"{notice.Title} ({late})",
        text = notice.Body,
        dueAt = notice.DueAt.ToString(),
        late,
        pageUrl = links?.Root?.ToString(),
        answers = Answers(notice, links),
    });

    private static object[]? Answers(Notice notice, INoticeLinks? links) => links?.Root is not { } root || notice.Question is null ? null
        : [.. links.Of(notice).Select(link => new { answer = "all well", shelf = link.Shelf, url = new Uri(root, link.Path).ToString() })];
}
