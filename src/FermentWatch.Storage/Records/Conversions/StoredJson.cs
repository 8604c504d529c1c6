using System.Text.Json;

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
