using Microsoft.Data.Sqlite;

namespace FermentWatch.Storage;

/// <summary>
/// Marks both files as open while the service runs. A kill leaves the mark, and beside it the journal with what was written last; a file
/// that bears the mark without a journal has lost something, which is said. A clean stop takes the mark away and leaves no journal.
/// </summary>
internal sealed class OpenMark : IDisposable
{
    private readonly (string Path, string Ask, string Set)[] _files;

    public OpenMark(StorageOptions options, StorageRemarks remarks)
    {
        _files = MarksOf(options);
        foreach ((string path, string ask, string set) in _files)
        {
            bool journal = File.Exists(path + "-wal");
            using SqliteConnection connection = Open(path);
            if (Number(connection, ask) != 0 && !journal)
                remarks.Add($"{Path.GetFileName(path)} was not closed when the service last ended, and its journal {Path.GetFileName(path)}-wal is "
                    + "gone: what was written "
                    + "shortly before may be missing. If the journal was moved, stop the service, put it back beside its file, and start again; "
                    + "nothing was entered since then.");
            Mark(connection, set, 1);
        }
    }

    /// <summary>Takes the marks of a copy away: the files that it was copied from are open, it is not.</summary>
    internal static void Clear(StorageOptions copy)
    {
        foreach ((string path, _, string set) in MarksOf(copy))
        {
            using SqliteConnection connection = Open(path);
            Mark(connection, set, 0);
        }
    }

    public void Dispose()
    {
        foreach ((string path, _, string set) in _files)
        {
            foreach (SqliteOpenMode mode in new[] { SqliteOpenMode.ReadWrite, SqliteOpenMode.ReadOnly })
                using (var pooled = new SqliteConnection(DatabaseFile.ConnectionString(path, mode, pooled: true)))
                    SqliteConnection.ClearPool(pooled);
            try
            {
                using SqliteConnection connection = Open(path);
                Mark(connection, set, 0);
            }
            catch (SqliteException)
            {
                // A disk that is gone or full: the mark stays, as after a kill.
            }
        }
    }

    private static (string Path, string Ask, string Set)[] MarksOf(StorageOptions options) =>
    [
        (options.ReadingsPath, "SELECT coalesce(opened, 0) FROM state", "UPDATE state SET opened = {0}"),
        // EF Core keeps no version there; a number in the header needs no table.
        (options.RecordsPath, "PRAGMA user_version", "PRAGMA user_version = {0}"),
    ];

    /// <summary>Sets the mark in the file itself: in the journal alone it would be lost with it.</summary>
    private static void Mark(SqliteConnection connection, string set, int value)
    {
        Run(connection, string.Format(System.Globalization.CultureInfo.InvariantCulture, set, value));
        Run(connection, "PRAGMA wal_checkpoint(TRUNCATE)");
    }

    private static SqliteConnection Open(string path)
    {
        var connection = new SqliteConnection(DatabaseFile.ConnectionString(path, SqliteOpenMode.ReadWrite, pooled: false));
        connection.Open();
        Run(connection, "PRAGMA busy_timeout = 5000");
        return connection;
    }

    private static void Run(SqliteConnection connection, string sql)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    private static long Number(SqliteConnection connection, string sql)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar() is long value ? value : 0;
    }
}
