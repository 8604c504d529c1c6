using FermentWatch.Kitchen.Forwarding;
using FermentWatch.Storage.Readings.Writing;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace FermentWatch.Storage.Readings.Forwarding;

/// <summary>The estimates, noted beside the readings because they are as many as readings are.</summary>
public sealed class EstimateLog : IEstimateLog
{
    private const string Columns = "jar, made_ms, inputs, ph_p10, ph_p50, ph_p90, acidity_p50, sourness_p50, days_to_target_p50";

    private readonly LogReader _reader;
    private readonly LogWriter _writer;

    internal EstimateLog(LogReader reader, LogWriter writer)
    {
        _reader = reader;
        _writer = writer;
    }

    /// <inheritdoc/>
    /// <exception cref="IOException">The log could not be written; nothing was noted.</exception>
    public Task NoteAsync(IReadOnlyList<SavedEstimate> estimates, CancellationToken cancellationToken) =>
        _writer.RunAsync(
            new WriteJob<int>(estimates.Count, session =>
            {
                foreach (var estimate in estimates)
                    session.Estimates.Note(estimate);
                return estimates.Count;
            }),
            cancellationToken);

    /// <inheritdoc/>
    public async Task<IReadOnlyDictionary<Guid, string>> LastInputsAsync(CancellationToken cancellationToken)
    {
        var rows = await _reader.QueryAsync(
            "SELECT jar, inputs FROM estimate WHERE seq IN (SELECT max(seq) FROM estimate GROUP BY jar)",
            row => (JarId: Guid.Parse(row.GetString(0)), Inputs: row.GetString(1)), cancellationToken).ConfigureAwait(false);
        return rows.ToDictionary(row => row.JarId, row => row.Inputs);
    }

    /// <inheritdoc/>
    public async Task<ForwardSlice<SavedEstimate>> AfterAsync(long cursor, int atMost, CancellationToken cancellationToken)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(atMost, 1);
        var rows = await _reader.QueryAsync(
            $"SELECT {Columns}, seq FROM estimate WHERE seq > $1 ORDER BY seq LIMIT $2",
            row => (Estimate: Read(row), Seq: row.GetInt64(9)), cancellationToken, cursor, atMost).ConfigureAwait(false);
        return new ForwardSlice<SavedEstimate>(rows.ConvertAll(row => row.Estimate), rows.Count == 0 ? cursor : rows[^1].Seq);
    }

    /// <inheritdoc/>
    public async Task<SavedEstimate?> NewestAsync(CancellationToken cancellationToken)
    {
        var rows = await _reader.QueryAsync($"SELECT {Columns} FROM estimate ORDER BY seq DESC LIMIT 1", Read, cancellationToken)
            .ConfigureAwait(false);
        return rows.Count == 0 ? null : rows[0];
    }

    /// <inheritdoc/>
    public Task<long> EndAsync(CancellationToken cancellationToken) =>
        _reader.NumberAsync("SELECT coalesce(max(seq), 0) FROM estimate", cancellationToken);

    /// <inheritdoc/>
    public Task<WaitingEntries> WaitingAsync(long cursor, CancellationToken cancellationToken) =>
        _reader.WaitingAsync("SELECT count(*), min(made_ms) FROM estimate WHERE seq > $1", cancellationToken, cursor);

    private static SavedEstimate Read(SqliteDataReader row) =>
        new(Guid.Parse(row.GetString(0)), Instant.FromUnixTimeMilliseconds(row.GetInt64(1)), row.GetString(2))
        {
            PhP10 = row.GetDouble(3),
            PhP50 = row.GetDouble(4),
            PhP90 = row.GetDouble(5),
            AcidityPercentLacticP50 = row.GetDouble(6),
            SournessP50 = row.GetDouble(7),
            DaysToTargetP50 = row.IsDBNull(8) ? null : row.GetDouble(8),
        };
}
