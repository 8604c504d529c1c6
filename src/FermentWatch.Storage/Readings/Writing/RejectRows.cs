using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Storage.Readings.Writing;

/// <summary>The table of what could not be used, as the writer sees it.</summary>
internal sealed class RejectRows(WriteSession session)
{
    // A device that makes up a topic for each message must not fill the disk: beyond this the one heard longest ago goes.
    internal const int MostKept = 1000;

    private readonly SqlStatement _count = session.Prepare(
        """
        INSERT INTO reject(topic, reason, count, sensor, example, explanation, received_ms) VALUES($1, $2, 1, $3, $4, $5, $6)
        ON CONFLICT(topic, reason) DO UPDATE SET count = count + 1, sensor = excluded.sensor,
            example = excluded.example, explanation = excluded.explanation, received_ms = excluded.received_ms
        """);
    private readonly SqlStatement _kept = session.Prepare("SELECT count(*) FROM reject");
    private readonly SqlStatement _forget = session.Prepare(
        "DELETE FROM reject WHERE (topic, reason) IN (SELECT topic, reason FROM reject ORDER BY received_ms LIMIT $1)");

    /// <summary>Adds one to the count of the reject's topic and reason, and keeps it as the last example.</summary>
    internal void Count(Reject reject)
    {
        _count.Run(
            reject.Topic, (int)reject.Reason, reject.SensorKey, reject.Example, reject.Explanation,
            reject.ReceivedAt.ToUnixTimeMilliseconds());
        long kept = (long)_kept.Scalar()!;
        if (kept > MostKept)
            _forget.Run(kept - MostKept);
    }
}
