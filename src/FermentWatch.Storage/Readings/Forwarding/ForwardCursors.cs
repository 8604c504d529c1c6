using FermentWatch.Kitchen.Forwarding;
using FermentWatch.Storage.Readings.Writing;
using NodaTime;

namespace FermentWatch.Storage.Readings.Forwarding;

/// <inheritdoc cref="IForwardCursors"/>
public sealed class ForwardCursors : IForwardCursors
{
    private readonly LogReader _reader;
    private readonly LogWriter _writer;

    internal ForwardCursors(LogReader reader, LogWriter writer)
    {
        _reader = reader;
        _writer = writer;
    }

    /// <inheritdoc/>
    public Task<long> ReadAsync(SeriesKind series, CancellationToken cancellationToken) =>
        _reader.NumberAsync("SELECT coalesce(max(seq), 0) FROM forward_cursor WHERE series = $1", cancellationToken, (int)series);

    /// <inheritdoc/>
    /// <exception cref="IOException">The place could not be written; it stays, and nothing was counted.</exception>
    public Task MoveAsync(SeriesKind series, long cursor, IReadOnlyList<NotForwarded> leftOut, CancellationToken cancellationToken) =>
        _writer.RunAsync(
            new WriteJob<long>(1 + leftOut.Count, session =>
            {
                session.Forward.Move(series, cursor);
                foreach (var point in leftOut)
                    session.Forward.LeaveOut(series, point);
                if (series == SeriesKind.Estimate)
                    session.Estimates.ForgetUpTo(cursor);
                return cursor;
            }),
            cancellationToken);

    /// <inheritdoc/>
    public async Task<IReadOnlyList<NotForwardedCount>> LeftOutAsync(CancellationToken cancellationToken) =>
        await _reader.QueryAsync(
            "SELECT series, reason, example, explanation, at_ms, count FROM not_forwarded ORDER BY series, reason",
            row => new NotForwardedCount(
                (SeriesKind)row.GetInt32(0),
                new NotForwarded((NotForwardedReason)row.GetInt32(1), row.GetString(2), row.GetString(3),
                    Instant.FromUnixTimeMilliseconds(row.GetInt64(4))),
                row.GetInt64(5)),
            cancellationToken).ConfigureAwait(false);
}
