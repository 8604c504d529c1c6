using FermentWatch.Kitchen.Forwarding;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace FermentWatch.Storage.Readings;

/// <summary>Read-only connections to readings.db, from a pool: a reader sees what was committed when it began, and holds nobody up.</summary>
internal sealed class LogReader(string path) : IDisposable
{
    private readonly string _connectionString = DatabaseFile.ConnectionString(path, SqliteOpenMode.ReadOnly, pooled: true);

    /// <summary>Runs a query off the caller's thread and returns its rows.</summary>
    /// <exception cref="IOException">The database could not be read.</exception>
    internal Task<List<T>> QueryAsync<T>(
        string sql, Func<SqliteDataReader, T> map, CancellationToken cancellationToken, params object?[] values) =>
        Task.Run(() => Query(sql, map, values, cancellationToken), cancellationToken);

    /// <summary>Runs a query of one row once for each set of values, all of them on one moment of the database.</summary>
    /// <exception cref="IOException">The database could not be read.</exception>
    internal Task<IReadOnlyList<T>> EachAsync<T>(
        string sql, Func<SqliteDataReader, T> map, IReadOnlyList<object?[]> valueSets, CancellationToken cancellationToken) =>
        valueSets.Count == 0 ? Task.FromResult<IReadOnlyList<T>>([]) : AtOneMomentAsync<IReadOnlyList<T>>((connection, moment) =>
        {
            using var statement = new SqlStatement(connection, sql, moment);
            return [.. valueSets.Select(values => statement.Rows(map, cancellationToken, values)[0])];
        }, cancellationToken);

    /// <summary>Runs several queries off the caller's thread, all of them on one moment of the database.</summary>
    /// <exception cref="IOException">The database could not be read.</exception>
    internal Task<T> AtOneMomentAsync<T>(Func<SqliteConnection, SqliteTransaction, T> read, CancellationToken cancellationToken) =>
        Task.Run(() => Read(connection =>
        {
            using var moment = connection.BeginTransaction(deferred: true);
            return read(connection, moment);
        }), cancellationToken);

    /// <summary>Runs a query whose first row has one number.</summary>
    /// <exception cref="IOException">The database could not be read.</exception>
    internal async Task<long> NumberAsync(string sql, CancellationToken cancellationToken, params object?[] values) =>
        (await QueryAsync(sql, row => row.GetInt64(0), cancellationToken, values).ConfigureAwait(false))[0];

    /// <summary>Runs a query whose one row has a count and the least of some times in milliseconds, which is null where the count is 0.</summary>
    /// <exception cref="IOException">The database could not be read.</exception>
    internal async Task<WaitingEntries> WaitingAsync(string sql, CancellationToken cancellationToken, params object?[] values) =>
        (await QueryAsync(sql, row => new WaitingEntries(row.GetInt64(0), row.IsDBNull(1) ? null : ReadingRow.At(row, 1)), cancellationToken, values)
            .ConfigureAwait(false))[0];

    /// <summary>The first whole millisecond at or after an instant: bounds finer than the log must not let an earlier reading in.</summary>
    internal static long CeilingMs(Instant bound)
    {
        // The very last instant has no millisecond after it that an instant could name.
        if (bound == Instant.MaxValue)
            return ReadingRow.LastMs + 1;
        long floor = bound.ToUnixTimeMilliseconds();
        return Instant.FromUnixTimeMilliseconds(floor) == bound ? floor : floor + 1;
    }

    public void Dispose()
    {
        using var connection = new SqliteConnection(_connectionString);
        SqliteConnection.ClearPool(connection);
    }

    private List<T> Query<T>(string sql, Func<SqliteDataReader, T> map, object?[] values, CancellationToken cancellationToken) =>
        Read(connection =>
        {
            using var statement = new SqlStatement(connection, sql);
            return statement.Rows(map, cancellationToken, values);
        });

    private T Read<T>(Func<SqliteConnection, T> read)
    {
        try
        {
            using var connection = new SqliteConnection(_connectionString);
            connection.Open();
            using var patience = new SqlStatement(connection, "PRAGMA busy_timeout = 5000");
            patience.Run();
            return read(connection);
        }
        catch (SqliteException trouble)
        {
            throw new IOException($"{path} could not be read: {trouble.Message}", trouble);
        }
    }
}
