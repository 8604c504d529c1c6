using System.Text.Json;
using FermentWatch.Kitchen.Notices;

namespace FermentWatch.Notices;

/// <summary>The JSON of a notice, for any push service; changed only by adding fields.</summary>
public static class NoticeJson
{
    /// <summary>UTF-8 bytes of the body.</summary>
    public static byte[] Of(Notice notice, string? late) => JsonSerializer.SerializeToUtf8Bytes(new
    {
        v = 1,
        key = notice.Key,
        person = notice.Person,
        title = late is null ? notice.Title : $"{notice.Title} ({late})",
        text = notice.Body,
        dueAt = notice.DueAt.ToString(),
        late,
    });
}
