using Microsoft.Data.Sqlite;

namespace FermentWatch.Storage;

/// <summary>Connections that change nothing, whether or not the service runs.</summary>
internal static class DatabaseLook
{
    /// <summary>
    /// Opens a database to look. With a journal beside it the service is at work or was killed, and the journal stays as it is; without one
    /// nobody is, and the files that SQLite makes for a reader go with this connection.
    /// </summary>
    /// <exception cref="SqliteException">It is not there, or is no database.</exception>
    internal static SqliteConnection Open(string path)
    {
        SqliteOpenMode mode = File.Exists(path + "-wal") ? SqliteOpenMode.ReadOnly : SqliteOpenMode.ReadWrite;
        var connection = new SqliteConnection(DatabaseFile.ConnectionString(path, mode, pooled: false));
        try
        {
            connection.Open();
            using SqliteCommand patience = connection.CreateCommand();
            patience.CommandText = "PRAGMA busy_timeout = 5000; PRAGMA query_only = ON";
            patience.ExecuteNonQuery();
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }
}
