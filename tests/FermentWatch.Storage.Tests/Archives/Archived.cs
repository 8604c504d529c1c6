using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using FermentWatch.Storage.Archives;
using FermentWatch.Storage.Archives.Taking;

namespace FermentWatch.Storage.Tests.Archives;

/// <summary>Archives in tests: written, taken, looked into and altered.</summary>
internal static class Archived
{
    internal static async Task<string> ExportAsync(string folder, string to, bool withReadings = true)
    {
        await using var file = new FileStream(to, FileMode.Create);
        await new HouseholdArchive(new StorageOptions { Folder = folder }).WriteAsync(file, withReadings, null, default);
        return to;
    }

    internal static ArchiveTroubles Import(string zip, string folder) =>
        new HouseholdImport(new StorageOptions { Folder = folder }).Take(zip, null, default);

    internal static SortedDictionary<string, byte[]> Files(string zip)
    {
        using ZipArchive archive = ZipFile.OpenRead(zip);
        return new(archive.Entries.ToDictionary(entry => entry.FullName, entry =>
        {
            using Stream stream = entry.Open();
            using var bytes = new MemoryStream();
            stream.CopyTo(bytes);
            return bytes.ToArray();
        }), StringComparer.Ordinal);
    }

    internal static string Text(string zip, string file) => Encoding.UTF8.GetString(Files(zip)[file]);

    /// <summary>Writes a file of an archive anew; the manifest is made to fit, as only somebody who means it would, unless that is not
    /// asked for.</summary>
    internal static void Alter(string zip, string file, Func<string, string> change, bool withManifest = true)
    {
        using ZipArchive archive = ZipFile.Open(zip, ZipArchiveMode.Update);
        byte[] content = Encoding.UTF8.GetBytes(change(Read(archive, file)));
        Write(archive, file, content);
        if (!withManifest)
            return;
        JsonNode manifest = JsonNode.Parse(Read(archive, Manifest.FileName))!;
        JsonNode entry = manifest["files"]!.AsArray().First(each => (string?)each!["name"] == file)!;
        (entry["bytes"], entry["sha256"]) = (content.Length, Convert.ToHexStringLower(SHA256.HashData(content)));
        Write(archive, Manifest.FileName, Encoding.UTF8.GetBytes(manifest.ToJsonString()));
    }

    /// <summary>Takes files out of an archive and out of its manifest, as a version had it that did not know them.</summary>
    internal static void Remove(string zip, params string[] files)
    {
        using ZipArchive archive = ZipFile.Open(zip, ZipArchiveMode.Update);
        JsonNode manifest = JsonNode.Parse(Read(archive, Manifest.FileName))!;
        JsonArray entries = manifest["files"]!.AsArray();
        foreach (string file in files)
        {
            archive.GetEntry(file)!.Delete();
            entries.Remove(entries.First(each => (string?)each!["name"] == file));
        }
        Write(archive, Manifest.FileName, Encoding.UTF8.GetBytes(manifest.ToJsonString()));
    }

    private static string Read(ZipArchive archive, string file)
    {
        using Stream stream = archive.GetEntry(file)!.Open();
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        return Encoding.UTF8.GetString(bytes.ToArray());
    }

    private static void Write(ZipArchive archive, string file, byte[] content)
    {
        archive.GetEntry(file)!.Delete();
        using Stream stream = archive.CreateEntry(file).Open();
        stream.Write(content);
    }
}
