using System.Text.Encodings.Web;
using System.Text.Json;

namespace FermentWatch.Storage.Archives;

/// <summary>What manifest.json says: whose archive it is, of which form, and what each file must be.</summary>
/// <param name="Format">Version of the form of an archive.</param>
/// <param name="Household">Id of the household: the same in both databases.</param>
/// <param name="Records">The last step by which the tables of the records came to be.</param>
/// <param name="WithReadings">Whether readings came along.</param>
/// <param name="Files">Every other file, in their order.</param>
internal sealed record Manifest(int Format, string Household, string Records, bool WithReadings, IReadOnlyList<ArchivedFile> Files)
{
    internal const string FileName = "manifest.json";

    internal const int CurrentFormat = 1;

    internal static readonly JsonSerializerOptions Form = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower, WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        RespectRequiredConstructorParameters = true, RespectNullableAnnotations = true,
    };
}

/// <summary>A file of an archive.</summary>
/// <param name="Name">Its path in the zip.</param>
/// <param name="Rows">How many rows it has; null for a file without rows.</param>
/// <param name="Bytes">Its length.</param>
/// <param name="Sha256">Of its content, in small hexadecimal digits.</param>
internal sealed record ArchivedFile(string Name, long? Rows, long Bytes, string Sha256);
