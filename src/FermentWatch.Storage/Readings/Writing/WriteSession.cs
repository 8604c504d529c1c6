using Microsoft.Data.Sqlite;

namespace FermentWatch.Storage.Readings.Writing;

/// <summary>The writer's connection with what it needs within a transaction. Not for two threads.</summary>
internal sealed class WriteSession : IDisposable
{
    private readonly SqliteConnection _connection;
    private readonly List<SqlStatement> _statements = [];
    private readonly SqlStatement _begin;
    private readonly SqlStatement _commit;

    /// <exception cref="SqliteException">The database is not there or cannot be opened. It is never created here: a card that fell out must not be
    /// taken for an empty log.</exception>
    internal WriteSession(string path, TimeSpan lockPatience)
    {
        _connection = new SqliteConnection(DatabaseFile.ConnectionString(path, SqliteOpenMode.ReadWrite, pooled: false));
        try
        {
            _connection.Open();
            Prepare($"PRAGMA busy_timeout = {(long)lockPatience.TotalMilliseconds}").Run();
            Prepare("PRAGMA journal_mode = WAL").Run();
            Prepare("PRAGMA synchronous = FULL").Run();
            _begin = Prepare("BEGIN IMMEDIATE");
            _commit = Prepare("COMMIT");
            Readings = new ReadingRows(this);
            Means = new MeanRows(this);
            Rejects = new RejectRows(this);
            Verdicts = new VerdictTally(this);
            Heard = new HeardRows(this);
            State = new StateRow(this);
            Forward = new ForwardRows(this);
            Estimates = new EstimateRows(this);
        }
        catch
        {
            Dispose();
            throw;
        }
    }

    internal ReadingRows Readings { get; }

    internal MeanRows Means { get; }

    internal RejectRows Rejects { get; }

    internal VerdictTally Verdicts { get; }

    internal HeardRows Heard { get; }

    internal StateRow State { get; }

    internal ForwardRows Forward { get; }

    internal EstimateRows Estimates { get; }

    /// <summary>A statement that lives as long as the session.</summary>
    internal SqlStatement Prepare(string sql)
    {
        var statement = new SqlStatement(_connection, sql);
        _statements.Add(statement);
        return statement;
    }

    internal void Begin()
    {
        _begin.Run();
        Readings.Begin();
    }

    internal void Commit()
    {
        Verdicts.Flush();
        Heard.Flush();
        _commit.Run();
    }

    /// <summary>Closes the connection; a transaction that is open is rolled back by that.</summary>
    public void Dispose()
    {
        foreach (var statement in _statements)
            statement.Dispose();
        _connection.Dispose();
    }
}
