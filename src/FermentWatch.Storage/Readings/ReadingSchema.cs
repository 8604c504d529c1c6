using FermentWatch.Storage.Readings.Writing;
using Microsoft.Data.Sqlite;

namespace FermentWatch.Storage.Readings;

/// <summary>The tables of readings.db, how a new one is made and how an existing one is recognised.</summary>
internal static class ReadingSchema
{
    /// <summary>"FWrd" in the file's header.</summary>
    internal const int ApplicationId = 0x46577264;

    /// <summary>Version of the tables, kept as user_version.</summary>
    internal const int Version = 4;

    private const string Tables =
        """
        CREATE TABLE reading(
            sensor INTEGER NOT NULL, quantity INTEGER NOT NULL, instant_ms INTEGER NOT NULL,
            value REAL NOT NULL, received_ms INTEGER NOT NULL, time_source INTEGER NOT NULL,
            verdict INTEGER NOT NULL, seq INTEGER NOT NULL,
            PRIMARY KEY(sensor, quantity, instant_ms)) STRICT, WITHOUT ROWID;
        CREATE UNIQUE INDEX reading_seq ON reading(seq);
        CREATE TABLE mean(
            span INTEGER NOT NULL, sensor INTEGER NOT NULL, quantity INTEGER NOT NULL, start_ms INTEGER NOT NULL,
            value REAL NOT NULL, minimum REAL NOT NULL, maximum REAL NOT NULL, count INTEGER NOT NULL,
            revision INTEGER NOT NULL DEFAULT 0,
            PRIMARY KEY(span, sensor, quantity, start_ms)) STRICT, WITHOUT ROWID;
        CREATE TABLE verdict_count(
            sensor INTEGER NOT NULL, verdict INTEGER NOT NULL, count INTEGER NOT NULL,
            PRIMARY KEY(sensor, verdict)) STRICT, WITHOUT ROWID;
        CREATE TABLE conflict(
            sensor INTEGER NOT NULL, quantity INTEGER NOT NULL, count INTEGER NOT NULL,
            instant_ms INTEGER NOT NULL, kept REAL NOT NULL, refused REAL NOT NULL, received_ms INTEGER NOT NULL,
            PRIMARY KEY(sensor, quantity)) STRICT, WITHOUT ROWID;
        CREATE TABLE reject(
            topic TEXT NOT NULL, reason INTEGER NOT NULL, count INTEGER NOT NULL, sensor INTEGER,
            example TEXT NOT NULL, explanation TEXT NOT NULL, received_ms INTEGER NOT NULL,
            PRIMARY KEY(topic, reason)) STRICT, WITHOUT ROWID;
        CREATE INDEX reject_received ON reject(received_ms);
        CREATE TABLE state(
            id INTEGER PRIMARY KEY CHECK(id = 1), means_revision INTEGER NOT NULL,
            pair TEXT, opened INTEGER) STRICT;
        INSERT INTO state(id, means_revision) VALUES(1, 0);
        CREATE TABLE estimate(
            seq INTEGER PRIMARY KEY AUTOINCREMENT, jar TEXT NOT NULL, made_ms INTEGER NOT NULL, inputs TEXT NOT NULL,
            ph_p10 REAL NOT NULL, ph_p50 REAL NOT NULL, ph_p90 REAL NOT NULL, acidity_p50 REAL NOT NULL, sourness_p50 REAL NOT NULL,
            days_to_target_p50 REAL, UNIQUE(jar, made_ms)) STRICT;
        CREATE TABLE forward_cursor(series INTEGER PRIMARY KEY, seq INTEGER NOT NULL) STRICT;
        CREATE TABLE not_forwarded(
            series INTEGER NOT NULL, reason INTEGER NOT NULL, count INTEGER NOT NULL,
            example TEXT NOT NULL, explanation TEXT NOT NULL, at_ms INTEGER NOT NULL,
            PRIMARY KEY(series, reason)) STRICT, WITHOUT ROWID;
        """;

    /// <summary>What came to the tables with version 2 and needs no column.</summary>
    private const string Additions =
        """
        CREATE INDEX reading_waiting ON reading(sensor, seq) WHERE verdict = 0;
        CREATE TABLE heard(sensor INTEGER PRIMARY KEY, received_ms INTEGER NOT NULL) STRICT;
        INSERT INTO heard SELECT sensor, max(received_ms) FROM reading GROUP BY sensor;
        """;

    /// <summary>What makes tables of each version those of the next, from version 1 on.</summary>
    internal static readonly string[] Steps =
    [
        $"""
        ALTER TABLE mean ADD COLUMN revision INTEGER NOT NULL DEFAULT 0;
        ALTER TABLE state ADD COLUMN pair TEXT;
        ALTER TABLE state ADD COLUMN opened INTEGER;
        {Additions}
        """,
        // Means of a minute were written and read by nobody: two fifths of the file. What they were made of stays.
        """
        DELETE FROM mean WHERE span = 1;
        ALTER TABLE state DROP COLUMN judged_seq;
        """,
        // Longer roll-ups for pictures of years; made of the hours, which stand in every log.
        string.Concat(Bucket.OfRollUps.Select(each => RollUp.OfAll(each.Span, each.Of))),
    ];

    private static readonly string[] TableNames =
        ["reading", "mean", "verdict_count", "conflict", "reject", "state", "estimate", "forward_cursor", "not_forwarded"];

    /// <summary>Makes sure that a whole database of this version is at the path.</summary>
    /// <exception cref="DatabaseRefusedException">What is there is foreign, half-written or newer.</exception>
    internal static void CreateOrCheck(string path)
    {
        if (!DatabaseFile.Inspect(path, ApplicationId))
            DatabaseFile.Create(path, Fill);
        Check(path);
    }

    /// <summary>Refuses a log whose tables are of a newer version. Changes nothing.</summary>
    /// <exception cref="DatabaseRefusedException">They are.</exception>
    internal static void RefuseNewer(string path)
    {
        using SqliteConnection connection = DatabaseLook.Open(path);
        KnownVersion(path, connection);
    }

    private static long KnownVersion(string path, SqliteConnection connection) =>
        (long)Scalar(connection, "PRAGMA user_version")! is var version && version <= Version ? version
            : throw new DatabaseRefusedException(path,
                $"it was written by a newer version of FermentWatch (tables {version}, this one knows {Version}). Start that version again.");

    private static void Fill(string draft)
    {
        using var connection = new SqliteConnection(DatabaseFile.ConnectionString(draft, SqliteOpenMode.ReadWriteCreate, pooled: false));
        connection.Open();
        Execute(connection, $"BEGIN; PRAGMA application_id = {ApplicationId}; PRAGMA user_version = {Version}; {Tables} {Additions} COMMIT;");
        Execute(connection, "PRAGMA journal_mode = WAL;");
    }

    private static void Check(string path)
    {
        try
        {
            using var connection = new SqliteConnection(DatabaseFile.ConnectionString(path, SqliteOpenMode.ReadWrite, pooled: false));
            connection.Open();
            long version = KnownVersion(path, connection);
            if (version < 1)
                throw new DatabaseRefusedException(path, "it bears our mark, but no version of its tables: it is half-written.");
            foreach (string table in TableNames)
            {
                if (Scalar(connection, $"SELECT 1 FROM sqlite_schema WHERE type = 'table' AND name = '{table}'") is null)
                    throw new DatabaseRefusedException(path, $"its table '{table}' is missing: it is half-written.");
            }
            if (version < Version)
                BringUpToDate(path, connection);
            TimesBeyondJudging.Heal(connection);
        }
        catch (SqliteException trouble)
        {
            throw new DatabaseRefusedException(path, $"SQLite cannot read it ({trouble.Message}).", trouble);
        }
    }

    /// <summary>Step by step, each in one transaction: a kill leaves the tables of one version or of the next.</summary>
    private static void BringUpToDate(string path, SqliteConnection connection)
    {
        using var turn = DatabaseFile.TakeTurn(path);
        for (long next = (long)Scalar(connection, "PRAGMA user_version")!; next < Version; next++)
            Execute(connection, $"BEGIN IMMEDIATE; {Steps[next - 1]} PRAGMA user_version = {next + 1}; COMMIT;");
    }

    private static void Execute(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    private static object? Scalar(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar();
    }
}
