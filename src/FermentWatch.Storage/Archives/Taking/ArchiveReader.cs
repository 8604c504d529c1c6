using System.IO.Compression;
using System.Text.Json;

namespace FermentWatch.Storage.Archives.Taking;

/// <summary>An archive that is read: each file once, and held against what the manifest says of it.</summary>
internal sealed class ArchiveReader : IDisposable
{
    private readonly ZipArchive _zip;
    private readonly ArchiveTroubles _troubles;
    private readonly Dictionary<string, ArchivedFile> _files;
    private readonly HashSet<string> _read = new(StringComparer.Ordinal);

    private ArchiveReader(ZipArchive zip, Manifest manifest, ArchiveTroubles troubles)
    {
        _zip = zip;
        Manifest = manifest;
        _troubles = troubles;
        _files = manifest.Files.DistinctBy(file => file.Name).ToDictionary(file => file.Name, StringComparer.Ordinal);
        string[] named = [.. manifest.Files.Select(file => file.Name), Manifest.FileName], there = [.. zip.Entries.Select(entry => entry.FullName)];
        foreach (string name in named.Except(there))
            troubles.Add(name, "is missing in the zip, though the manifest names it.");
        foreach (string name in there.Except(named))
            troubles.Add(name, "is in the zip, and the manifest does not name it.");
        foreach (string name in there.CountBy(name => name).Concat(named.CountBy(name => name))
            .Where(same => same.Value > 1).Select(same => same.Key))
            troubles.Add(name, "is there more than once.");
    }

    internal Manifest Manifest { get; }

    /// <summary>Files that nobody has read yet.</summary>
    internal IEnumerable<ArchivedFile> Unread => _files.Values.Where(file => !_read.Contains(file.Name));

    /// <summary>What the manifest says of a file; null where it names none.</summary>
    internal ArchivedFile? Find(string name) => _files.GetValueOrDefault(name);

    /// <summary>Opens an archive of a form that this version knows; null with what is wrong.</summary>
    internal static ArchiveReader? Open(Stream from, string path, ArchiveTroubles troubles)
    {
        try
        {
            var zip = new ZipArchive(from, ZipArchiveMode.Read);
            if (ManifestOf(zip, path, troubles) is { } manifest)
                return new ArchiveReader(zip, manifest, troubles);
            zip.Dispose();
        }
        catch (InvalidDataException trouble)
        {
            troubles.Add(path, $"this is no whole zip ({trouble.Message}). Export the household again.");
        }
        return null;
    }

    /// <summary>
    /// Lets a file be read, to its end, and says where it is other than the manifest says. What reads it returns its rows, or null for a file
    /// without any. A file that is not there is not read.
    /// </summary>
    internal void Read(string name, Func<Stream, long?> read)
    {
        if (!_files.TryGetValue(name, out ArchivedFile? file) || _zip.GetEntry(name) is not { } entry || !_read.Add(name))
            return;
        if (entry.Length != file.Bytes)
        {
            _troubles.Add(name, FormattableString.Invariant($"has {entry.Length} bytes where the manifest says {file.Bytes}: it was changed."));
            return;
        }
        try
        {
            using var hashed = new HashedStream(entry.Open());
            long? rows = read(hashed);
            hashed.CopyTo(Stream.Null);
            if (hashed.Bytes != file.Bytes || hashed.Hash() != file.Sha256)
                _troubles.Add(name, "is other than the manifest says (SHA-256): it was changed or damaged.");
            if (rows != file.Rows)
                _troubles.Add(name, FormattableString.Invariant($"has {rows} rows where the manifest says {file.Rows}."));
        }
        catch (InvalidDataException trouble)
        {
            _troubles.Add(name, $"is damaged ({trouble.Message}).");
        }
    }

    public void Dispose() => _zip.Dispose();

    private static Manifest? ManifestOf(ZipArchive zip, string path, ArchiveTroubles troubles)
    {
        if (zip.GetEntry(Manifest.FileName) is not { } entry)
        {
            troubles.Add(path, $"has no {Manifest.FileName}: it is no export of a household, or was cut short.");
            return null;
        }
        try
        {
            using Stream stream = entry.Open();
            Manifest manifest = JsonSerializer.Deserialize<Manifest>(stream, Manifest.Form)!;
            if (manifest.Format == Manifest.CurrentFormat)
                return manifest;
            troubles.Add(Manifest.FileName, FormattableString.Invariant(
                $"is of format {manifest.Format}; this version reads format {Manifest.CurrentFormat}. Import with the version that exported it."));
        }
        catch (JsonException trouble)
        {
            troubles.Add(Manifest.FileName, $"cannot be read ({trouble.Message}).");
        }
        return null;
    }
}
