using System.Text.Json;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Probes;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Storage.Records.Conversions;

/// <summary>Reading of JSON in a row.</summary>
internal static class StoredJson
{
    /// <summary>What was stored; null where it cannot be read, so that one damaged row does not keep all others from being read.</summary>
    internal static T? Read<T>(string stored)
        where T : class
    {
        try
        {
            return JsonSerializer.Deserialize<T>(stored, JsonSerializerOptions.Default);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}

/// <summary>A small record as JSON in the row it belongs to: brine of an earlier jar, vinegar.</summary>
internal sealed class JsonRecordConverter<T>()
    : ValueConverter<T?, string>(
        record => JsonSerializer.Serialize(record, JsonSerializerOptions.Default),
        stored => StoredJson.Read<T>(stored))
    where T : class;

/// <summary>What a probe showed in buffers, as JSON in the row of its check: it is written once and always read with it.</summary>
internal sealed class BufferReadingsConverter()
    : ValueConverter<IReadOnlyList<BufferReading>, string>(points => Write(points), stored => Read(stored))
{
    /// <summary>The list cannot change, so the same list means the same points.</summary>
    internal static readonly ValueComparer<IReadOnlyList<BufferReading>> Comparer = new(
        (left, right) => ReferenceEquals(left, right), points => points.Count, points => points);

    private static string Write(IReadOnlyList<BufferReading> points) =>
        JsonSerializer.Serialize(points.Select(point => new Row(point.Buffer.ToString(), point.Millivolts, point.Celsius)),
            JsonSerializerOptions.Default);

    private static List<BufferReading> Read(string stored) =>
        [.. (StoredJson.Read<List<Row>>(stored) ?? []).Where(row => Enum.TryParse<ReferenceBuffer>(row.Buffer, out _))
            .Select(row => new BufferReading(Enum.Parse<ReferenceBuffer>(row.Buffer), row.Millivolts, row.Celsius))];

    // By name, and without what follows from the rest.
    private sealed record Row(string Buffer, double Millivolts, double Celsius);
}

/// <summary>What went into a jar, as JSON in its row: it is written once and always read with the jar.</summary>
internal sealed class PortionsConverter()
    : ValueConverter<IReadOnlyList<Portion>, string>(
        portions => JsonSerializer.Serialize(portions, JsonSerializerOptions.Default),
        stored => StoredJson.Read<List<Portion>>(stored) ?? new List<Portion>())
{
    /// <summary>The list cannot change, so the same list means the same portions.</summary>
    internal static readonly ValueComparer<IReadOnlyList<Portion>> Comparer = new(
        (left, right) => ReferenceEquals(left, right), portions => portions.Count, portions => portions);
}

/// <summary>Ids in one column: they are read with their row, and never asked for by themselves. Empty is none.</summary>
internal sealed class GuidsConverter()
    : ValueConverter<IReadOnlyList<Guid>, string>(
        ids => ids.Count == 0 ? "" : JsonSerializer.Serialize(ids, JsonSerializerOptions.Default),
        stored => StoredJson.Read<List<Guid>>(stored) ?? new List<Guid>())
{
    /// <summary>Written once with their row.</summary>
    internal static readonly ValueComparer<IReadOnlyList<Guid>> Comparer = new(
        (left, right) => ReferenceEquals(left, right), ids => ids.Count, ids => ids);
}

/// <summary>What a notice asks, as JSON in its row: it is written once and read with the notice.</summary>
internal sealed class QuestionConverter()
    : ValueConverter<NoticeQuestion?, string?>(question => Write(question), stored => Read(stored))
{
    /// <summary>A question is never changed, only put.</summary>
    internal static readonly ValueComparer<NoticeQuestion?> Comparer = new(
        (left, right) => ReferenceEquals(left, right), question => question == null ? 0 : question.Date.GetHashCode(), question => question);

    private static string? Write(NoticeQuestion? question) => question is null ? null
        : JsonSerializer.Serialize(new Stored(LocalDatePattern.Iso.Format(question.Date), InstantPattern.ExtendedIso.Format(question.Until),
            question.Shelves));

    private static NoticeQuestion? Read(string? stored)
    {
        if (stored is null || StoredJson.Read<Stored>(stored) is not { Date: not null, Until: not null, Shelves: not null } read)
            return null;
        return LocalDatePattern.Iso.Parse(read.Date).TryGetValue(default, out LocalDate date)
            && InstantPattern.ExtendedIso.Parse(read.Until).TryGetValue(default, out Instant until) ? new NoticeQuestion(date, until, read.Shelves)
                : null;
    }

    private sealed record Stored(string Date, string Until, IReadOnlyList<AskedShelf> Shelves);
}
