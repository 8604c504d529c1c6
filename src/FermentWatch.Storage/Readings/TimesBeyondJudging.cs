using FermentWatch.Kitchen.Readings;
using Microsoft.Data.Sqlite;

namespace FermentWatch.Storage.Readings;

/// <summary>
/// Rows whose time no calendar can name, from before the door refused them or by a damaged file. Nothing can be computed with them:
/// they get the verdict that their clock is not believed, and no reader meets them.
/// </summary>
internal static class TimesBeyondJudging
{
    // A look-up by key for each sensor and quantity; a log may hold millions of rows.
    private const string Found =
        """
        WITH RECURSIVE one(sensor) AS (
            SELECT min(sensor) FROM reading
            UNION ALL SELECT (SELECT min(sensor) FROM reading WHERE sensor > one.sensor) FROM one WHERE sensor IS NOT NULL)
        SELECT reading.sensor, reading.quantity, reading.instant_ms, reading.verdict FROM one
        JOIN (SELECT 1 AS quantity UNION SELECT 2 UNION SELECT 3 UNION SELECT 4) AS kind
        JOIN reading ON reading.sensor = one.sensor AND reading.quantity = kind.quantity
            AND (reading.instant_ms > $1 OR reading.instant_ms < $2)
        WHERE reading.verdict <> $3
        """;

    /// <summary>Gives such rows their verdict. Returns how many there were.</summary>
    internal static int Heal(SqliteConnection connection)
    {
        using var find = new SqlStatement(connection, Found);
        var rows = find.Rows(
            row => (Sensor: row.GetInt64(0), Quantity: row.GetInt64(1), InstantMs: row.GetInt64(2), Verdict: row.GetInt64(3)),
            CancellationToken.None, ReadingRow.LastMs, ReadingRow.FirstMs, (int)Verdict.ClockNotBelieved);
        if (rows.Count == 0)
            return 0;
        using var transaction = connection.BeginTransaction(deferred: false);
        using var revise = new SqlStatement(
            connection, "UPDATE reading SET verdict = $4 WHERE sensor = $1 AND quantity = $2 AND instant_ms = $3 AND verdict = $5", transaction);
        using var tally = new SqlStatement(
            connection, "INSERT INTO verdict_count VALUES($1, $2, $3) ON CONFLICT(sensor, verdict) DO UPDATE SET count = count + excluded.count",
                transaction);
        foreach (var (sensor, quantity, instantMs, verdict) in rows)
        {
            if (revise.Run(sensor, quantity, instantMs, (int)Verdict.ClockNotBelieved, verdict) == 0)
                continue;
            tally.Run(sensor, verdict, -1);
            tally.Run(sensor, (int)Verdict.ClockNotBelieved, 1);
        }
        transaction.Commit();
        return rows.Count;
    }
}
