using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Storage.Readings.Writing;
using NodaTime;

namespace FermentWatch.Storage.Readings;

/// <summary>What is read from readings.db, and the writing of verdicts.</summary>
public sealed class ReadingLog : IReadingLog
{
    private readonly LogReader _reader;
    private readonly LogWriter _writer;

    internal ReadingLog(LogReader reader, LogWriter writer)
    {
        _reader = reader;
        _writer = writer;
    }

    /// <inheritdoc/>
    public async Task<IReadOnlyList<WaitingReadings>> WaitingAsync(CancellationToken cancellationToken) =>
        await _reader.QueryAsync(
            """
            WITH RECURSIVE waiting(sensor) AS (
                SELECT min(sensor) FROM reading WHERE verdict = 0
                UNION ALL
                SELECT (SELECT min(sensor) FROM reading WHERE verdict = 0 AND sensor > waiting.sensor) FROM waiting WHERE sensor IS NOT NULL)
            SELECT sensor, (SELECT max(seq) FROM reading WHERE verdict = 0 AND reading.sensor = waiting.sensor) FROM waiting WHERE sensor IS NOT NULL
            """,
            row => new WaitingReadings(row.GetInt32(0), 0, row.GetInt64(1)), cancellationToken).ConfigureAwait(false);

    /// <inheritdoc/>
    public async Task<LogSlice> NotYetJudgedAsync(WaitingReadings waiting, int atMost, CancellationToken cancellationToken)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(atMost, 1);
        var rows = await _reader.QueryAsync(
            $"SELECT {ReadingRow.Columns}, seq FROM reading WHERE verdict = 0 AND sensor = $1 AND seq > $2 AND seq <= $3 ORDER BY seq LIMIT $4",
            row => (Reading: ReadingRow.Read(row), Seq: row.GetInt64(ReadingRow.ColumnCount)),
            cancellationToken, waiting.SensorKey, waiting.After, waiting.UpTo, atMost).ConfigureAwait(false);
        return new LogSlice(rows.ConvertAll(row => row.Reading), rows.Count > 0 ? rows[^1].Seq : waiting.After);
    }

    /// <inheritdoc/>
    /// <remarks>A pending reading beyond <paramref name="judgedUpTo"/> keeps waiting for its own turn, and a verdict that stands already changes
    /// nothing.</remarks>
    /// <exception cref="ArgumentException">A change is for a reading that is not there, or the place is beyond the end of the log.</exception>
    /// <exception cref="IOException">The log could not be written; nothing was settled.</exception>
    public Task SettleAsync(IReadOnlyList<VerdictChange> changes, long judgedUpTo, CancellationToken cancellationToken) =>
        _writer.RunAsync(
            new WriteJob<bool>(changes.Count, session => Settlement.Write(session, changes, judgedUpTo)), cancellationToken);

    /// <inheritdoc/>
    public async Task<IReadOnlyList<JudgedReading>> ReadAsync(
        int sensorKey, Quantity quantity, Instant from, Instant until, CancellationToken cancellationToken) =>
        await _reader.QueryAsync(
            $"""
            SELECT {ReadingRow.Columns} FROM reading
            WHERE sensor = $1 AND quantity = $2 AND instant_ms >= $3 AND instant_ms < $4 ORDER BY instant_ms
            """,
            ReadingRow.Read, cancellationToken, sensorKey, (int)quantity, LogReader.CeilingMs(from), LogReader.CeilingMs(until))
                .ConfigureAwait(false);

    /// <inheritdoc/>
    public async Task<Instant?> FirstAsync(int sensorKey, Quantity quantity, Instant from, Instant until, CancellationToken cancellationToken)
    {
        var rows = await _reader.QueryAsync(
            "SELECT instant_ms FROM reading WHERE sensor = $1 AND quantity = $2 AND instant_ms >= $3 AND instant_ms < $4 ORDER BY instant_ms LIMIT 1",
            row => ReadingRow.At(row, 0), cancellationToken, sensorKey, (int)quantity, LogReader.CeilingMs(from), LogReader.CeilingMs(until))
                .ConfigureAwait(false);
        return rows.Count > 0 ? rows[0] : null;
    }

    /// <inheritdoc/>
    public async Task<Instant?> LastOtherAsync(
        int sensorKey, Quantity quantity, double value, Instant from, Instant until, CancellationToken cancellationToken)
    {
        var rows = await _reader.QueryAsync(
            """
            SELECT instant_ms FROM reading
            WHERE sensor = $1 AND quantity = $2 AND instant_ms >= $3 AND instant_ms < $4 AND value <> $5 ORDER BY instant_ms DESC LIMIT 1
            """,
            row => ReadingRow.At(row, 0), cancellationToken, sensorKey, (int)quantity, LogReader.CeilingMs(from), LogReader.CeilingMs(until),
                value).ConfigureAwait(false);
        return rows.Count > 0 ? rows[0] : null;
    }

    /// <inheritdoc/>
    public async Task<Instant?> LastBetweenAsync(int sensorKey, Quantity quantity, Instant from, Instant until, CancellationToken cancellationToken)
    {
        var rows = await _reader.QueryAsync(
            "SELECT instant_ms FROM reading WHERE sensor = $1 AND quantity = $2 AND instant_ms >= $3 AND instant_ms < $4 ORDER BY instant_ms DESC "
            + "LIMIT 1",
            row => ReadingRow.At(row, 0), cancellationToken, sensorKey, (int)quantity, LogReader.CeilingMs(from), LogReader.CeilingMs(until))
                .ConfigureAwait(false);
        return rows.Count > 0 ? rows[0] : null;
    }

    /// <inheritdoc/>
    public async Task<Instant?> LastHeardAsync(int sensorKey, CancellationToken cancellationToken)
    {
        var rows = await _reader.QueryAsync(
            "SELECT received_ms FROM heard WHERE sensor = $1", row => ReadingRow.At(row, 0), cancellationToken, sensorKey).ConfigureAwait(false);
        return rows.Count > 0 ? rows[0] : null;
    }

    /// <inheritdoc/>
    public async Task<IReadOnlyList<JudgedReading>> LastAsync(int sensorKey, CancellationToken cancellationToken)
    {
        if (await LastHeardAsync(sensorKey, cancellationToken).ConfigureAwait(false) is not { } heard)
            return [];
        // One look-up by key for each quantity; grouping would walk over every reading of the sensor.
        string one = $"SELECT {ReadingRow.Columns} FROM reading WHERE sensor = $1 AND quantity = {{0}}";
        string each = $"SELECT * FROM ({one} AND instant_ms <= $2 ORDER BY instant_ms DESC LIMIT 1)";
        string ahead = $"SELECT * FROM ({one} AND instant_ms > $2 AND instant_ms <= $3 AND NOT EXISTS ({one} AND instant_ms <= $2) ORDER BY "
            + "instant_ms LIMIT 1)";
        string sql = string.Join(" UNION ALL ", Enum.GetValues<Quantity>()
            .SelectMany(quantity => (string[])[Of(each, quantity), Of(ahead, quantity)]));
        long believedUntil = Math.Min(heard.ToUnixTimeMilliseconds() + (long)ReadingJudge.ClockMayLead.TotalMilliseconds, ReadingRow.LastMs);
        return await _reader.QueryAsync(sql, ReadingRow.Read, cancellationToken, sensorKey, believedUntil, ReadingRow.LastMs).ConfigureAwait(false);

        static string Of(string template, Quantity quantity) => template.Replace("{0}", $"{(int)quantity}", StringComparison.Ordinal);
    }

    /// <inheritdoc/>
    public async Task<IReadOnlyList<ReadingMean>> MeansAsync(
        int sensorKey, Quantity quantity, MeanSpan span, Instant from, Instant until, CancellationToken cancellationToken) =>
        await _reader.QueryAsync(
            """
            SELECT start_ms, value, minimum, maximum, count FROM mean
            WHERE span = $1 AND sensor = $2 AND quantity = $3 AND start_ms >= $4 AND start_ms < $5 ORDER BY start_ms
            """,
            row => new ReadingMean(ReadingRow.At(row, 0), row.GetDouble(1), row.GetDouble(2), row.GetDouble(3), row.GetInt32(4)),
            cancellationToken, (int)span, sensorKey, (int)quantity, LogReader.CeilingMs(from), LogReader.CeilingMs(until)).ConfigureAwait(false);

    /// <inheritdoc/>
    public async Task<int> LastSensorKeyAsync(CancellationToken cancellationToken) =>
        checked((int)await _reader.NumberAsync("SELECT coalesce(max(sensor), 0) FROM verdict_count", cancellationToken).ConfigureAwait(false));

    /// <inheritdoc/>
    public async Task<Instant?> LastReceivedAsync(CancellationToken cancellationToken)
    {
        var rows = await _reader.QueryAsync(
            "SELECT received_ms FROM reading ORDER BY seq DESC LIMIT 1", row => ReadingRow.At(row, 0), cancellationToken).ConfigureAwait(false);
        return rows.Count > 0 ? rows[0] : null;
    }

    /// <inheritdoc/>
    public Task<IReadOnlyList<MeanStamp>> MeanStampsAsync(
        Quantity quantity, MeanSpan span, IReadOnlyList<SensorSpan> spans, CancellationToken cancellationToken) =>
        _reader.EachAsync(
            """
            SELECT count(*), max(revision), max(start_ms) FROM mean
            WHERE span = $1 AND sensor = $2 AND quantity = $3 AND start_ms >= $4 AND start_ms < $5
            """,
            row => new MeanStamp(row.GetInt64(0), row.IsDBNull(1) ? 0 : row.GetInt64(1), row.IsDBNull(2) ? null : ReadingRow.At(row, 2)),
            [.. spans.Select(each =>
                new object?[] { (int)span, each.SensorKey, (int)quantity, LogReader.CeilingMs(each.From), LogReader.CeilingMs(each.Until) })],
            cancellationToken);

    /// <inheritdoc/>
    public async Task<IReadOnlyDictionary<Verdict, long>> VerdictCountsAsync(int sensorKey, CancellationToken cancellationToken)
    {
        var rows = await _reader.QueryAsync(
            "SELECT verdict, count FROM verdict_count WHERE sensor = $1 AND count > 0",
            row => (Verdict: (Verdict)row.GetInt32(0), Count: row.GetInt64(1)), cancellationToken, sensorKey).ConfigureAwait(false);
        return rows.ToDictionary(row => row.Verdict, row => row.Count);
    }

    /// <summary>How often, for each quantity of the sensor, a key came again with another value; the last such case beside it.</summary>
    public async Task<IReadOnlyList<ConflictCount>> ConflictsAsync(int sensorKey, CancellationToken cancellationToken) =>
        await _reader.QueryAsync(
            "SELECT quantity, count, instant_ms, kept, refused, received_ms FROM conflict WHERE sensor = $1 ORDER BY quantity",
            row => new ConflictCount((Quantity)row.GetInt32(0), row.GetInt64(1), ReadingRow.At(row, 2), row.GetDouble(3), row.GetDouble(4),
                ReadingRow.At(row, 5)),
            cancellationToken, sensorKey).ConfigureAwait(false);

    /// <inheritdoc/>
    public async Task<IReadOnlyList<RejectCount>> RejectsAsync(CancellationToken cancellationToken) =>
        await _reader.QueryAsync(
            "SELECT topic, reason, example, received_ms, sensor, explanation, count FROM reject ORDER BY received_ms DESC, topic, reason",
            row => new RejectCount(
                new Reject(
                    row.GetString(0), (RejectReason)row.GetInt32(1), row.GetString(2), ReadingRow.At(row, 3),
                    row.IsDBNull(4) ? null : row.GetInt32(4), row.GetString(5)),
                row.GetInt64(6)),
            cancellationToken).ConfigureAwait(false);

    /// <inheritdoc/>
    public Task<long> MeansRevisionAsync(CancellationToken cancellationToken) => StateAsync("means_revision", cancellationToken);

    private Task<long> StateAsync(string column, CancellationToken cancellationToken) =>
        _reader.NumberAsync($"SELECT {column} FROM state", cancellationToken);
}
