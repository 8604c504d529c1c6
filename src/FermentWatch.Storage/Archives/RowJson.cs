using System.Buffers;
using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using Microsoft.Data.Sqlite;

namespace FermentWatch.Storage.Archives;

/// <summary>
/// A row as JSON, value by value as it is stored, so that it comes back to the last bit: a whole number without a point, any other with one,
/// text as text, nothing as null. A photo is named by its file.
/// </summary>
internal static class RowJson
{
    private static readonly JsonWriterOptions Readable = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Writes a row that a query of <see cref="TableShape.Select"/> stands on.</summary>
    internal static void Write(IBufferWriter<byte> to, SqliteDataReader row, TableShape shape)
    {
        using var json = new Utf8JsonWriter(to, Readable);
        json.WriteStartObject();
        for (int column = 0; column < shape.Taken.Count; column++)
        {
            json.WritePropertyName(shape.Taken[column].Title);
            Write(json, row, column, shape);
        }
        json.WriteEndObject();
    }

    /// <summary>The values of a row in the order of the columns, as the store takes them; null with what is wrong where it cannot be read.</summary>
    internal static object?[]? Read(ReadOnlyMemory<byte> line, TableShape shape, out string wrong)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(line);
            return Values(document.RootElement, shape, out wrong);
        }
        catch (JsonException trouble)
        {
            wrong = $"is no JSON object ({trouble.Message})";
            return null;
        }
    }

    private static object?[]? Values(JsonElement row, TableShape shape, out string wrong)
    {
        wrong = "is no JSON object";
        if (row.ValueKind != JsonValueKind.Object)
            return null;
        var values = new object?[shape.Taken.Count];
        var unknown = row.EnumerateObject().Select(property => property.Name).Except(shape.Taken.Select(column => column.Title)).ToList();
        wrong = $"has '{(unknown.Count > 0 ? unknown[0] : "")}', which this version does not know";
        if (unknown.Count > 0)
            return null;
        for (int place = 0; place < values.Length; place++)
        {
            ShapeColumn column = shape.Taken[place];
            wrong = $"lacks '{column.Title}'";
            if (!row.TryGetProperty(column.Title, out JsonElement value))
                return null;
            wrong = $"says {Short(value)} for '{column.Title}'; {WouldBeRight(column.Type)} would be right";
            if (!TryRead(value, column.Type, out values[place]))
                return null;
        }
        wrong = "";
        return values;
    }

    private static void Write(Utf8JsonWriter json, SqliteDataReader row, int column, TableShape shape)
    {
        switch (row.GetValue(column))
        {
            case DBNull:
                json.WriteNullValue();
                break;
            case long whole:
                json.WriteNumberValue(whole);
                break;
            case double number:
                json.WriteRawValue(Text(number), skipInputValidation: true);
                break;
            case byte[]:
                json.WriteStringValue(PhotoFile.NameOf(row.GetString(shape.KeyPlace)));
                break;
            case var text:
                json.WriteStringValue((string)text);
                break;
        }
    }

    /// <summary>The shortest that reads back to the same bits, always with a point or an exponent; what is beyond all numbers as 9e999.</summary>
    internal static string Text(double number)
    {
        if (double.IsInfinity(number))
            return number > 0 ? "9e999" : "-9e999";
        string shortest = number.ToString("R", CultureInfo.InvariantCulture);
        return shortest.AsSpan().ContainsAny('.', 'E') ? shortest : shortest + ".0";
    }

    private static bool TryRead(JsonElement value, string type, out object? stored)
    {
        stored = null;
        switch (value.ValueKind)
        {
            case JsonValueKind.Null:
                return true;
            case JsonValueKind.String when type is "TEXT" or "BLOB":
                stored = value.GetString();
                return true;
            case JsonValueKind.Number when type == "INTEGER" && value.TryGetInt64(out long whole):
                stored = whole;
                return true;
            case JsonValueKind.Number when type == "REAL" && value.TryGetDouble(out double number):
                stored = number;
                return true;
            default:
                return false;
        }
    }

    private static string WouldBeRight(string type) => type switch
    {
        "INTEGER" => "a whole number",
        "REAL" => "a number",
        "BLOB" => "the name of a file",
        _ => "text",
    };

    private static string Short(JsonElement value)
    {
        string text = value.GetRawText();
        return text.Length <= 40 ? text : text[..40] + "...";
    }
}

/// <summary>How photos are named in an archive.</summary>
internal static class PhotoFile
{
    internal const string Folder = "photos/";

    /// <summary>By the observation that it belongs to.</summary>
    internal static string NameOf(string observation) => $"{Folder}{observation.ToLowerInvariant()}.jpg";
}
