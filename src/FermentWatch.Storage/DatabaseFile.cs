using System.Buffers.Binary;
using Microsoft.Data.Sqlite;

namespace FermentWatch.Storage;

/// <summary>
/// What can be told of a SQLite file before SQLite opens it, and how a new one comes to be. SQLite itself would take an empty
/// file for a new database and fill it; a household's file that was cut to nothing must not be overwritten like that.
/// </summary>
internal static class DatabaseFile
{
    private const string MoveAway = "Move it away to begin with a new one, or put a backup in its place.";
    private const int HeaderLength = 100;

    private static readonly string[] Companions = ["", "-journal", "-wal", "-shm"];

    /// <summary>True if the file is there and looks whole and ours; false if there is none and one may be created.</summary>
    /// <exception cref="DatabaseRefusedException">There is a file, or a remnant of one, that must not be touched.</exception>
    internal static bool Inspect(string path, int applicationId)
    {
        if (!File.Exists(path))
        {
            if (File.Exists(path + "-wal"))
                throw new DatabaseRefusedException(path,
                    $"the file is missing, but its journal {path}-wal is there and may hold what was written last. Put the database back beside its "
                    + "journal, or move the journal away to begin with a new one.");
            return false;
        }

        byte[] header = ReadHeader(path, out long length);
        if (length == 0)
            throw new DatabaseRefusedException(path, $"the file is empty. {MoveAway}");
        if (length < HeaderLength || !header.AsSpan(0, 16).SequenceEqual("SQLite format 3\0"u8))
            throw new DatabaseRefusedException(path, $"it is not a SQLite database. {MoveAway}");
        int found = BinaryPrimitives.ReadInt32BigEndian(header.AsSpan(68));
        if (found != applicationId)
            throw new DatabaseRefusedException(path,
                $"it is a SQLite database of something else (application id 0x{found:x8}, ours is 0x{applicationId:x8}). {MoveAway}");
        RefuseIfCutShort(path, header, length);
        PrivateFiles.Keep([.. Companions.Select(companion => path + companion), .. PrivateFiles.CopiesOf(path)]);
        return true;
    }

    /// <summary>
    /// Lets <paramref name="fill"/> make the database under another name and then gives it its own, so that a kill leaves either
    /// none or a whole one. A draft that a kill left behind is thrown away.
    /// </summary>
    internal static void Create(string path, Action<string> fill)
    {
        string folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        if (!Directory.Exists(folder))
            PrivateFiles.CreateFolder(folder);
        string draft = path + ".draft";
        using var turn = TakeTurn(path);
        if (File.Exists(path))
            return;
        foreach (string companion in Companions)
            File.Delete(draft + companion);
        PrivateFiles.CreateEmpty(draft);
        fill(draft);
        // The directory entry becomes durable with the first commit: SQLite syncs the folder when it begins a journal.
        File.Move(draft, path);
    }

    /// <summary>A connection string for one physical connection, or for pooled read-only ones.</summary>
    internal static string ConnectionString(string path, SqliteOpenMode mode, bool pooled) =>
        new SqliteConnectionStringBuilder
        {
            DataSource = path,
            Mode = mode,
            Pooling = pooled,
            // The driver's own retry sleeps 150 ms a turn; SQLite's busy_timeout does the waiting instead.
            DefaultTimeout = 1,
        }.ToString();

    /// <summary>Keeps other processes from creating or altering the tables of the database until it is disposed of; a kill ends it too.</summary>
    /// <exception cref="IOException">Another process has its turn.</exception>
    internal static FileStream TakeTurn(string path)
    {
        string lockFile = path + ".lock";
        try
        {
            return new FileStream(lockFile, PrivateFiles.Options(FileMode.OpenOrCreate, FileOptions.DeleteOnClose));
        }
        catch (IOException trouble)
        {
            throw new IOException($"{path} cannot be made: another process is at it, or {lockFile} cannot be written. {trouble.Message}", trouble);
        }
    }

    private static byte[] ReadHeader(string path, out long length)
    {
        using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        length = file.Length;
        byte[] header = new byte[HeaderLength];
        file.ReadAtLeast(header, HeaderLength, throwOnEndOfStream: false);
        return header;
    }

    private static void RefuseIfCutShort(string path, byte[] header, long length)
    {
        // With a journal beside it a shorter file is whole: a kill may have come while the journal was being copied in.
        var journal = new FileInfo(path + "-wal");
        if (journal.Exists && journal.Length > 0)
            return;
        int coded = BinaryPrimitives.ReadUInt16BigEndian(header.AsSpan(16));
        long pageSize = coded == 1 ? 65536 : coded;
        long expected = pageSize * BinaryPrimitives.ReadUInt32BigEndian(header.AsSpan(28));
        if (length < expected)
            throw new DatabaseRefusedException(path, $"it is cut short: {length} bytes of {expected}. {MoveAway}");
    }
}
