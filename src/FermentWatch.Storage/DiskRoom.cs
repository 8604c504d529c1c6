using System.Globalization;

namespace FermentWatch.Storage;

/// <summary>How much room is left on the disk that holds the databases.</summary>
/// <param name="options">Where they lie.</param>
public sealed class DiskRoom(StorageOptions options)
{
    // A write needs its page in the journal and later in the file; a migration or a backup needs as much as the file.
    private const long LeastBytes = 8L << 20, LittleBytes = 200L << 20;

    /// <summary>Bytes that are left now; null where the system does not say.</summary>
    public long? FreeBytes()
    {
        try
        {
            return new DriveInfo(Path.GetFullPath(options.Folder)).AvailableFreeSpace;
        }
        catch (Exception unknown) when (unknown is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return null;
        }
    }

    /// <summary>Bytes each database takes up, with what is written beside it and not yet in it; 0 for one that is not there.</summary>
    public IReadOnlyDictionary<string, long> UsedBytes() => new Dictionary<string, long>
    {
        ["readings"] = LengthOf(options.ReadingsPath), ["records"] = LengthOf(options.RecordsPath),
    };

    /// <summary>What is left now, in words and with what to do, and whether nothing can be relied on to be written; null where there is
    /// room.</summary>
    public (string Words, bool IsFull)? Read() => FreeBytes() is { } bytes ? Of(bytes) : null;

    /// <summary>The same for so many bytes.</summary>
    public static (string Words, bool IsFull)? Of(long bytes) => bytes switch
    {
        < LeastBytes => ("The disk is full. Make room on the disk that holds the databases: until then what is entered may not be stored, and says "
            + "so. What was stored before is kept.", true),
        < LittleBytes => (string.Create(CultureInfo.InvariantCulture,
            $"{bytes >> 20} MB are left on the disk that holds the databases. Make room before it is full: nothing can be stored then."), false),
        _ => null,
    };

    private static long LengthOf(string path) =>
        new[] { path, $"{path}-wal" }.Select(each => new FileInfo(each)).Where(file => file.Exists).Sum(file => file.Length);
}
