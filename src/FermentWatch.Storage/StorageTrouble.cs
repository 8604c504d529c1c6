using FermentWatch.Kitchen.Health;
using Microsoft.Data.Sqlite;

namespace FermentWatch.Storage;

/// <summary>What a failure of the disk or of a database file is, and what to do, in words for the household.</summary>
public sealed class StorageTrouble : IDiskTrouble
{
    // Primary result codes: SQLite, "Result and Error Codes", sqlite.org/rescode.html.
    private const int ReadOnly = 8, InputOutput = 10, Corrupt = 11, Full = 13, CannotOpen = 14, NotADatabase = 26;

    // ENOSPC and EDQUOT of Linux's errno.h, as .NET passes them on in the low bits of HResult on Unix.
    private const int NoSpace = 28, QuotaExceeded = 122;

    /// <inheritdoc/>
    public string? WordsOf(Exception? trouble)
    {
        for (Exception? cause = trouble; cause is not null; cause = cause.InnerException)
            if (Words(cause) is { } words)
                return words;
        return null;
    }

    private static string? Words(Exception cause) => cause switch
    {
        SqliteException { SqliteErrorCode: Full } =>
            "The disk is full. Make room on the disk that holds the databases; what was stored before is kept.",
        SqliteException { SqliteErrorCode: ReadOnly } =>
            "The databases cannot be written. Look whether the disk is mounted read-only, and whether the folder still belongs to the service.",
        SqliteException { SqliteErrorCode: InputOutput } =>
            "The disk or card fails when it is read or written. Copy the folder of the databases to another one and start from there.",
        SqliteException { SqliteErrorCode: Corrupt or NotADatabase } =>
            "A database is damaged. Stop the service, keep the folder as it is, and put a backup in its place.",
        SqliteException { SqliteErrorCode: CannotOpen } =>
            "A database cannot be opened. Look whether its disk is there, and whether too many files are open.",
        IOException when (cause.HResult & 0xFFFF) is NoSpace or QuotaExceeded =>
            "The disk is full. Make room on the disk that holds the databases; what was stored before is kept.",
        _ => null,
    };
}

/// <summary>What was found when the databases were opened that an adult should know, a line each.</summary>
public sealed class StorageRemarks
{
    private readonly List<string> _all = [];

    public IReadOnlyList<string> All => _all;

    internal void Add(string remark) => _all.Add(remark);
}
