using System.Text.Json;
using FermentWatch.Kitchen.Jars;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace FermentWatch.Storage.Records.Conversions;

/// <summary>The brine of an earlier jar, as JSON in the row of the jar it started.</summary>
internal sealed class StarterConverter()
    : ValueConverter<Starter?, string>(
        starter => JsonSerializer.Serialize(starter, JsonSerializerOptions.Default),
        stored => StoredJson.Read<Starter>(stored));
