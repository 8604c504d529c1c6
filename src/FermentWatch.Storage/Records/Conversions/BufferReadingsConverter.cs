using System.Text.Json;
using FermentWatch.Kitchen.Probes;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace FermentWatch.Storage.Records.Conversions;

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
