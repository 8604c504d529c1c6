using FermentWatch.Kitchen.Forwarding;

namespace FermentWatch.Storage.Readings.Writing;

/// <summary>The tables of what has been passed on, as the writer sees them.</summary>
internal sealed class ForwardRows(WriteSession session)
{
    private readonly SqlStatement _move = session.Prepare(
        "INSERT INTO forward_cursor(series, seq) VALUES($1, $2) ON CONFLICT(series) DO UPDATE SET seq = excluded.seq");
    private readonly SqlStatement _leaveOut = session.Prepare(
        """
        INSERT INTO not_forwarded(series, reason, count, example, explanation, at_ms) VALUES($1, $2, 1, $3, $4, $5)
        ON CONFLICT(series, reason) DO UPDATE SET count = count + 1,
            example = excluded.example, explanation = excluded.explanation, at_ms = excluded.at_ms
        """);

    internal void Move(SeriesKind series, long cursor) => _move.Run((int)series, cursor);

    internal void LeaveOut(SeriesKind series, NotForwarded point) =>
        _leaveOut.Run((int)series, (int)point.Reason, point.Example, point.Explanation, point.At.ToUnixTimeMilliseconds());
}
