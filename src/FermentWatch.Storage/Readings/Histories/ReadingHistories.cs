using FermentWatch.Kitchen.Readings;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace FermentWatch.Storage.Readings.Histories;

/// <inheritdoc cref="IReadingHistory"/>
public sealed class ReadingHistories : IReadingHistory
{
    private const string Buckets =
        """
        SELECT start_ms, value, minimum, maximum, count FROM mean
        WHERE sensor = $1 AND quantity = $2 AND start_ms >= $3 AND start_ms < $4 AND span = $5 ORDER BY start_ms
        """;

    private static readonly string Singles =
        $"""
        SELECT instant_ms, value FROM reading
        WHERE sensor = $1 AND quantity = $2 AND instant_ms >= $3 AND instant_ms < $4 AND verdict = {(int)Verdict.Counts} ORDER BY instant_ms
        """;

    private readonly LogReader _reader;

    internal ReadingHistories(LogReader reader) => _reader = reader;

    /// <inheritdoc/>
    /// <exception cref="IOException">The log could not be read.</exception>
    public Task<MeasuredHistory> AskAsync(HistoryQuestion question, CancellationToken cancellationToken)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(question.Points, HistoryQuestion.FewestPoints);
        return _reader.AtOneMomentAsync((connection, moment) => Read(connection, moment, question, cancellationToken), cancellationToken);
    }

    private static MeasuredHistory Read(
        SqliteConnection connection, SqliteTransaction moment, HistoryQuestion question, CancellationToken cancellationToken)
    {
        using var buckets = new SqlStatement(connection, Buckets, moment);
        using var singles = new SqlStatement(connection, Singles, moment);
        long width = PointWidth.Of(LogReader.CeilingMs(question.From), LogReader.CeilingMs(question.Until), question.Points);
        var fold = new PointFold(width);
        var sensors = question.Spans.GroupBy(span => span.SensorKey).Select(spans => spans.OrderBy(span => span.From).ToList()).ToList();
        foreach (List<SensorSpan> sensor in sensors)
        {
            cancellationToken.ThrowIfCancellationRequested();
            foreach (SensorSpan span in sensor)
                FoldIn(fold, buckets, singles, question, span, PointWidth.RollUpFor(width));
            fold.NextSensor();
        }

        if (sensors.Count == 1 && question.MayBeSingle && fold.Readings <= question.Points)
            return new MeasuredHistory(null, [.. sensors[0].SelectMany(span => OneByOne(singles, question, span, cancellationToken))]);
        return new MeasuredHistory(Duration.FromMilliseconds(width), fold.Points());
    }

    private static void FoldIn(
        PointFold fold, SqlStatement buckets, SqlStatement singles, HistoryQuestion question, SensorSpan span, MeanSpan longest)
    {
        (long from, long until) = Bounds(question, span);
        foreach (SpanPiece piece in SpanCover.Of(longest, from, until))
        {
            if (piece.RollUp is { } rollUp)
                buckets.Each(row => fold.Add(row.GetInt64(0), row.GetDouble(1), row.GetDouble(2), row.GetDouble(3), row.GetInt64(4)),
                    span.SensorKey, (int)question.Quantity, piece.FromMs, piece.UntilMs, (int)rollUp);
            else
                singles.Each(row => fold.Add(row.GetInt64(0), row.GetDouble(1), row.GetDouble(1), row.GetDouble(1), 1),
                    span.SensorKey, (int)question.Quantity, piece.FromMs, piece.UntilMs);
        }
    }

    private static List<ReadingMean> OneByOne(
        SqlStatement singles, HistoryQuestion question, SensorSpan span, CancellationToken cancellationToken)
    {
        (long from, long until) = Bounds(question, span);
        return singles.Rows(row => new ReadingMean(ReadingRow.At(row, 0), row.GetDouble(1), row.GetDouble(1), row.GetDouble(1), 1),
            cancellationToken, span.SensorKey, (int)question.Quantity, from, until);
    }

    private static (long FromMs, long UntilMs) Bounds(HistoryQuestion question, SensorSpan span) =>
        (LogReader.CeilingMs(Instant.Max(question.From, span.From)), LogReader.CeilingMs(Instant.Min(question.Until, span.Until)));
}
