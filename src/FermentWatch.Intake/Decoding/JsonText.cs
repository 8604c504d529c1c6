using System.Text.Json;
using System.Text.Unicode;

namespace FermentWatch.Intake.Decoding;

/// <summary>Documents of JSON as devices send them.</summary>
public static class JsonText
{
    private static readonly JsonDocumentOptions _options = new() { MaxDepth = 32, AllowTrailingCommas = true };

    private static ReadOnlySpan<byte> ByteOrderMark => [0xEF, 0xBB, 0xBF];

    /// <summary>
    /// Parses a document. Firmware that prints floats writes NaN and infinity where JSON knows no such word: they become null,
    /// so that they cost their own field and not the whole payload. Null where it is no JSON even then, or no Unicode: what is
    /// returned holds only names and strings that can be read.
    /// </summary>
    public static JsonDocument? Parse(ReadOnlyMemory<byte> payload)
    {
        // Bytes that C strings and lines leave behind at the end are no part of the document.
        ReadOnlyMemory<byte> document = payload[..payload.Span.TrimEnd(" \t\r\n\0"u8).Length];
        if (document.Span.StartsWith(ByteOrderMark))
            document = document[ByteOrderMark.Length..];
        if (!Utf8.IsValid(document.Span))
            return null;
        return TryParse(document) ?? (NotANumberTokens.ReplaceWithNull(document.Span) is { } mended ? TryParse(mended) : null);
    }

    /// <summary>The string, or null where it is none.</summary>
    public static string? Of(JsonElement text) => text.ValueKind == JsonValueKind.String ? text.GetString() : null;

    private static JsonDocument? TryParse(ReadOnlyMemory<byte> document)
    {
        try
        {
            JsonDocument parsed = JsonDocument.Parse(document, _options);
            // Half a surrogate pair can be written as an escape only. JSON allows it, and the library throws when it is read.
            if (document.Span.IndexOf("\\u"u8) >= 0)
                ReadAll(parsed.RootElement);
            return parsed;
        }
        catch (Exception exception) when (exception is JsonException or InvalidOperationException)
        {
            return null;
        }
    }

    private static void ReadAll(JsonElement element)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.String:
                element.GetString();
                break;
            case JsonValueKind.Array:
                foreach (JsonElement item in element.EnumerateArray())
                    ReadAll(item);
                break;
            case JsonValueKind.Object:
                foreach (JsonProperty field in element.EnumerateObject())
                {
                    _ = field.Name;
                    ReadAll(field.Value);
                }
                break;
        }
    }
}
