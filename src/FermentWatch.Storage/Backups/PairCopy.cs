using FermentWatch.Storage.Readings;
using FermentWatch.Storage.Records;
using Microsoft.Data.Sqlite;

namespace FermentWatch.Storage.Backups;

/// <summary>A copy of both databases as they stood at one moment, and the check that it is whole.</summary>
internal static class PairCopy
{
    /// <summary>Copies the pair while the service goes on, into a folder that holds none.</summary>
    /// <exception cref="SqliteException">A file cannot be read, or the copy cannot be written.</exception>
    internal static void Make(StorageOptions from, StorageOptions to)
    {
        // Both are held at their moment before the first is copied. The records come first: what they still ask to be judged again is judged
        // once more, whereas readings that were not judged yet, with records that no longer ask for it, would stay so.
        using SqliteConnection records = Hold(from.RecordsPath), readings = Hold(from.ReadingsPath);
        Copy(records, to.RecordsPath);
        Copy(readings, to.ReadingsPath);
    }

    /// <summary>Refuses a pair that is not whole, not ours, of two households or of a newer version. Changes nothing.</summary>
    /// <exception cref="DatabaseRefusedException">It cannot be relied on; the message says why.</exception>
    internal static void Check(StorageOptions pair)
    {
        foreach ((string path, int applicationId) in new[]
            { (pair.RecordsPath, RecordsDatabase.ApplicationId), (pair.ReadingsPath, ReadingSchema.ApplicationId) })
        {
            if (!DatabaseFile.Inspect(path, applicationId))
                throw new DatabaseRefusedException(path, "it is missing: a backup is a pair of files.");
            if (Damage(path) is { } damage)
                throw new DatabaseRefusedException(path, $"SQLite finds it damaged ({damage}).");
        }
        DatabasePair.RefuseStrangers(pair);
        RecordsDatabase.RefuseUnknownSteps(pair.RecordsPath);
        ReadingSchema.RefuseNewer(pair.ReadingsPath);
    }

    private static SqliteConnection Hold(string path)
    {
        SqliteConnection connection = DatabaseLook.Open(path);
        using var moment = new SqlStatement(connection, "BEGIN; SELECT count(*) FROM sqlite_schema");
        moment.Scalar();
        return connection;
    }

    private static void Copy(SqliteConnection from, string path)
    {
        PrivateFiles.CreateEmpty(path);
        using var to = new SqliteConnection(DatabaseFile.ConnectionString(path, SqliteOpenMode.ReadWrite, pooled: false));
        to.Open();
        from.BackupDatabase(to);
    }

    private static string? Damage(string path)
    {
        try
        {
            using SqliteConnection connection = DatabaseLook.Open(path);
            using var ask = new SqlStatement(connection, "PRAGMA integrity_check(1)");
            return ask.Scalar() as string is var said && said == "ok" ? null : said ?? "it says nothing";
        }
        catch (SqliteException trouble)
        {
            return trouble.Message;
        }
    }
}
