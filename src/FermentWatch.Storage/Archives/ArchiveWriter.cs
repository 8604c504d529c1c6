using System.IO.Compression;
using System.Security.Cryptography;
using System.Text.Json;

namespace FermentWatch.Storage.Archives;

/// <summary>Writes the files of an archive one after the other and remembers of each what the manifest says of it.</summary>
internal sealed class ArchiveWriter(Stream to) : IDisposable
{
    // Always the same: the same household gives the same archive.
    private static readonly DateTimeOffset NoTime = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    private readonly ZipArchive _zip = new(to, ZipArchiveMode.Create, leaveOpen: true);
    private readonly List<ArchivedFile> _files = [];

    /// <summary>Adds a file. What fills it returns how many rows it has, or null for a file without rows.</summary>
    internal void Add(string name, CompressionLevel compression, Func<Stream, long?> fill)
    {
        ZipArchiveEntry entry = _zip.CreateEntry(name, compression);
        entry.LastWriteTime = NoTime;
        using var counted = new HashedStream(entry.Open());
        long? rows = fill(counted);
        counted.Flush();
        _files.Add(new ArchivedFile(name, rows, counted.Bytes, counted.Hash()));
    }

    /// <summary>Adds the manifest, which names every other file; the last one.</summary>
    internal void Close(Manifest manifest)
    {
        ZipArchiveEntry entry = _zip.CreateEntry(Manifest.FileName, CompressionLevel.Optimal);
        entry.LastWriteTime = NoTime;
        using Stream stream = entry.Open();
        JsonSerializer.Serialize(stream, manifest with { Files = _files }, Manifest.Form);
    }

    public void Dispose() => _zip.Dispose();
}

/// <summary>Passes bytes on, or hands them over, and keeps their count and their SHA-256.</summary>
internal sealed class HashedStream(Stream inner) : Stream
{
    private readonly IncrementalHash _hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);

    internal long Bytes { get; private set; }

    public override bool CanRead => inner.CanRead;

    public override bool CanSeek => false;

    public override bool CanWrite => inner.CanWrite;

    public override long Length => throw new NotSupportedException();

    public override long Position { get => Bytes; set => throw new NotSupportedException(); }

    /// <summary>SHA-256 of what went through, in small hexadecimal digits.</summary>
    internal string Hash() => Convert.ToHexStringLower(_hash.GetHashAndReset());

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        inner.Write(buffer);
        Note(buffer);
    }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override int Read(Span<byte> buffer)
    {
        int read = inner.Read(buffer);
        Note(buffer[..read]);
        return read;
    }

    public override void Flush() => inner.Flush();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            inner.Dispose();
            _hash.Dispose();
        }
        base.Dispose(disposing);
    }

    private void Note(ReadOnlySpan<byte> bytes)
    {
        _hash.AppendData(bytes);
        Bytes += bytes.Length;
    }
}
