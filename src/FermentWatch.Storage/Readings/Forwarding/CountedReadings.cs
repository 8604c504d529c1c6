using FermentWatch.Kitchen.Forwarding;
using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Storage.Readings.Forwarding;

/// <summary>
/// The readings that count, in the order of writing. One that comes to count by a later verdict has got a new place in that order
/// with it, so that whoever follows meets it then.
/// </summary>
public sealed class CountedReadings : IForwardLog<Reading>
{
    private static readonly string Counts = $"verdict = {(int)Verdict.Counts}";

    private readonly LogReader _reader;

    internal CountedReadings(LogReader reader) => _reader = reader;

    /// <inheritdoc/>
    public async Task<ForwardSlice<Reading>> AfterAsync(long cursor, int atMost, CancellationToken cancellationToken)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(atMost, 1);
        // The end is read first: what is written in between lies beyond it and waits for the next slice.
        long end = await EndAsync(cancellationToken).ConfigureAwait(false);
        var rows = await _reader.QueryAsync(
            $"SELECT {ReadingRow.Columns}, seq FROM reading WHERE seq > $1 AND seq <= $2 AND {Counts} ORDER BY seq LIMIT $3",
            row => (Reading: ReadingRow.Read(row), Seq: row.GetInt64(ReadingRow.ColumnCount)),
            cancellationToken, cursor, end, atMost).ConfigureAwait(false);
        return new ForwardSlice<Reading>(
            rows.ConvertAll(row => row.Reading.Reading), rows.Count == atMost ? rows[^1].Seq : Math.Max(cursor, end));
    }

    /// <inheritdoc/>
    public async Task<Reading?> NewestAsync(CancellationToken cancellationToken)
    {
        var rows = await _reader.QueryAsync(
            $"SELECT {ReadingRow.Columns} FROM reading WHERE {Counts} ORDER BY seq DESC LIMIT 1", ReadingRow.Read, cancellationToken)
            .ConfigureAwait(false);
        return rows.Count == 0 ? null : rows[0].Reading;
    }

    /// <inheritdoc/>
    public Task<long> EndAsync(CancellationToken cancellationToken) =>
        _reader.NumberAsync("SELECT coalesce(max(seq), 0) FROM reading", cancellationToken);

    /// <inheritdoc/>
    public Task<WaitingEntries> WaitingAsync(long cursor, CancellationToken cancellationToken) =>
        _reader.WaitingAsync($"SELECT count(*), min(received_ms) FROM reading WHERE seq > $1 AND {Counts}", cancellationToken, cursor);
}
