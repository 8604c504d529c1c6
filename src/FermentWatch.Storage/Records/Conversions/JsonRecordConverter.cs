using System.Text.Json;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace FermentWatch.Storage.Records.Conversions;

/// <summary>A small record as JSON in the row it belongs to: brine of an earlier jar, vinegar.</summary>
internal sealed class JsonRecordConverter<T>()
    : ValueConverter<T?, string>(
        record => JsonSerializer.Serialize(record, JsonSerializerOptions.Default),
        stored => StoredJson.Read<T>(stored))
    where T : class;
