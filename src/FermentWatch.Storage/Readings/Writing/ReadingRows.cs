using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Storage.Readings.Writing;

/// <summary>The table of readings, as the writer sees it.</summary>
internal sealed class ReadingRows(WriteSession session)
{
    private readonly SqlStatement _lastSeq = session.Prepare("SELECT coalesce(max(seq), 0) FROM reading");
    private readonly SqlStatement _insert = session.Prepare(
        """
        INSERT INTO reading(sensor, quantity, instant_ms, value, received_ms, time_source, verdict, seq)
        VALUES($1, $2, $3, $4, $5, $6, $7, $8) ON CONFLICT(sensor, quantity, instant_ms) DO NOTHING
        """);
    private readonly SqlStatement _value = session.Prepare(
        "SELECT value FROM reading WHERE sensor = $1 AND quantity = $2 AND instant_ms = $3");
    private readonly SqlStatement _firstFree = session.Prepare(
        """
        SELECT instant_ms + 1 FROM reading AS taken
        WHERE sensor = $1 AND quantity = $2 AND instant_ms >= $3 AND NOT EXISTS (
            SELECT 1 FROM reading AS next
            WHERE next.sensor = taken.sensor AND next.quantity = taken.quantity AND next.instant_ms = taken.instant_ms + 1)
        ORDER BY instant_ms LIMIT 1
        """);
    private readonly SqlStatement _standing = session.Prepare(
        "SELECT verdict, seq FROM reading WHERE sensor = $1 AND quantity = $2 AND instant_ms = $3");
    private readonly SqlStatement _revise = session.Prepare(
        "UPDATE reading SET verdict = $4, seq = $5 WHERE sensor = $1 AND quantity = $2 AND instant_ms = $3");
    private readonly SqlStatement _conflict = session.Prepare(
        """
        INSERT INTO conflict(sensor, quantity, count, instant_ms, kept, refused, received_ms) VALUES($1, $2, 1, $3, $4, $5, $6)
        ON CONFLICT(sensor, quantity) DO UPDATE SET count = count + 1,
            instant_ms = excluded.instant_ms, kept = excluded.kept, refused = excluded.refused, received_ms = excluded.received_ms
        """);
    private readonly TakenRuns _taken = new();

    /// <summary>The number given last in the order of writing.</summary>
    internal long LastSeq { get; private set; }

    /// <summary>A transaction begins: takes up the order of writing where the file has it.</summary>
    internal void Begin()
    {
        LastSeq = (long)_lastSeq.Scalar()!;
        _taken.Forget();
    }

    /// <summary>Writes a reading at an instant, unless that is taken.</summary>
    internal bool TryInsert(Reading reading, long instantMs)
    {
        bool isNew = _insert.Run(
            reading.SensorKey, (int)reading.Quantity, instantMs, reading.Value,
            reading.ReceivedAt.ToUnixTimeMilliseconds(), (int)reading.TimeSource, (int)Verdict.Pending, LastSeq + 1) == 1;
        if (isNew)
            LastSeq++;
        return isNew;
    }

    /// <summary>Writes a reading at its instant or, where that is taken, at the first free millisecond after it.</summary>
    internal void InsertWhereFree(Reading reading, long instantMs)
    {
        long from = _taken.EndOfRun(reading.SensorKey, reading.Quantity, instantMs);
        long free = from;
        while (!TryInsert(reading, free))
            free = (long)_firstFree.Scalar(reading.SensorKey, (int)reading.Quantity, free)!;
        if (free > instantMs)
            _taken.Add(reading.SensorKey, reading.Quantity, instantMs, free);
    }

    /// <summary>The value stored under a key that is taken.</summary>
    internal double ValueAt(Reading reading, long instantMs) =>
        (double)_value.Scalar(reading.SensorKey, (int)reading.Quantity, instantMs)!;

    /// <summary>Counts a reading whose key was taken by another value.</summary>
    internal void CountConflict(Reading reading, long instantMs, double kept) =>
        _conflict.Run(
            reading.SensorKey, (int)reading.Quantity, instantMs, kept, reading.Value, reading.ReceivedAt.ToUnixTimeMilliseconds());

    /// <summary>The verdict that stands, and the place in the order of writing, of the reading a change is for.</summary>
    internal (Verdict Verdict, long Seq) Standing(VerdictChange change)
    {
        var found = _standing.Rows(
            row => ((Verdict)row.GetInt32(0), row.GetInt64(1)), CancellationToken.None,
            change.SensorKey, (int)change.Quantity, change.MeasuredAt.ToUnixTimeMilliseconds());
        return found.Count == 1
            ? found[0]
            : throw new ArgumentException($"There is no reading to judge: sensor {change.SensorKey}, {change.Quantity}, {change.MeasuredAt}.");
    }

    /// <summary>Writes another verdict. It gets a new place in the order of writing, so that whoever follows the log sees it.</summary>
    internal void Revise(VerdictChange change) =>
        _revise.Run(
            change.SensorKey, (int)change.Quantity, change.MeasuredAt.ToUnixTimeMilliseconds(), (int)change.Verdict, ++LastSeq);
}
