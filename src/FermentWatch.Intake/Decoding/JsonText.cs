using System.Text.Json;
using System.Text.Unicode;

namespace FermentWatch.Intake.Decoding;

/// <summary>Strings and documents of JSON as devices send them.</summary>
public static class JsonText
{
    private static readonly JsonDocumentOptions _options = new() { MaxDepth = 32, AllowTrailingCommas = true };

    private static ReadOnlySpan<byte> ByteOrderMark => [0xEF, 0xBB, 0xBF];

    /// <summary>
    /// Parses a document. Firmware that prints floats writes NaN and infinity where JSON knows no such word: they become null,
    /// so that they cost their own field and not the whole payload. Null where it is no JSON even then.
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

    /// <summary>The string, or null where it is none or not valid Unicode.</summary>
    public static string? Of(JsonElement text)
    {
        try
        {
            return text.ValueKind == JsonValueKind.String ? text.GetString() : null;
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    /// <summary>The name of a field, or null where it is not valid Unicode.</summary>
    public static string? NameOf(JsonProperty field)
    {
        try
        {
            return field.Name;
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    private static JsonDocument? TryParse(ReadOnlyMemory<byte> document)
    {
        try
        {
            return JsonDocument.Parse(document, _options);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
