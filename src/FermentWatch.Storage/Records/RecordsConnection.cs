using System.Data.Common;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace FermentWatch.Storage.Records;

/// <summary>How connections to records.db are made.</summary>
internal sealed class RecordsConnection : DbConnectionInterceptor
{
    // SQLite waits in short turns; the driver alone would sleep 150 ms for a lock of 5.
    private const string Settings = "PRAGMA busy_timeout = 5000; PRAGMA synchronous = FULL;";

    private static readonly RecordsConnection Instance = new();

    /// <summary>Points a context at a file, which is never created by that.</summary>
    internal static void Configure(DbContextOptionsBuilder builder, string path) =>
        Configure(builder, path, SqliteOpenMode.ReadWrite, pooled: true);

    internal static void Configure(DbContextOptionsBuilder builder, string path, SqliteOpenMode mode, bool pooled) =>
        builder.UseSqlite(DatabaseFile.ConnectionString(path, mode, pooled)).AddInterceptors(Instance);

    /// <summary>A context for one piece of work outside the service's container.</summary>
    internal static RecordsContext Context(string path, SqliteOpenMode mode)
    {
        var builder = new DbContextOptionsBuilder<RecordsContext>();
        Configure(builder, path, mode, pooled: false);
        return new RecordsContext(builder.Options);
    }

    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
    {
        using var command = connection.CreateCommand();
        command.CommandText = Settings;
        command.ExecuteNonQuery();
    }

    public override async Task ConnectionOpenedAsync(
        DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        await using var command = connection.CreateCommand();
        command.CommandText = Settings;
        await command.ExecuteNonQueryAsync(cancellationToken);
    }
}
