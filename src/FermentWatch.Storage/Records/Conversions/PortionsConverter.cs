using System.Text.Json;
using FermentWatch.Kitchen.Jars;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace FermentWatch.Storage.Records.Conversions;

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
