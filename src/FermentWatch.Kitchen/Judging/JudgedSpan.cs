using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Kitchen.Judging;

/// <summary>Verdicts for spans of one series, gathered where they are other than what stands.</summary>
internal sealed class JudgedSpan(IReadingLog log, int sensorKey, Quantity quantity, JudgingBasis basis)
{
    private readonly HashSet<Instant> _noted = [];

    public int SensorKey => sensorKey;

    public Quantity Quantity => quantity;

    /// <summary>What is other than before, and whether it had no verdict.</summary>
    public List<(VerdictChange Change, bool Waited)> Changes { get; } = [];

    /// <summary>Judges what was measured within from &lt;= measured &lt; until, and returns that.</summary>
    public async Task<IReadOnlyList<Reading>> JudgeAsync(Instant from, Instant until, CancellationToken cancellationToken)
    {
        IReadOnlyList<JudgedReading> entries = await log.ReadAsync(
            sensorKey, quantity, Bounded.Earlier(from, ReadingJudge.Reach), Bounded.Later(until, ReadingJudge.Reach), cancellationToken);
        int first = entries.TakeWhile(entry => entry.Reading.MeasuredAt < from).Count();
        int end = first + entries.Skip(first).TakeWhile(entry => entry.Reading.MeasuredAt < until).Count();
        var readings = entries.Select(entry => entry.Reading).ToList();
        bool[] stuck = await new StuckRun(log, sensorKey, quantity).FindAsync(readings, first, end, cancellationToken);
        int index = first;
        foreach (Verdict verdict in ReadingJudge.Judge(readings, first, end, basis.RangeOf(sensorKey, quantity)))
        {
            cancellationToken.ThrowIfCancellationRequested();
            Note(entries[index], verdict == Verdict.Counts ? Standing(readings[index], stuck[index - first]) : verdict);
            index++;
        }
        return readings.GetRange(first, end - first);
    }

    private Verdict Standing(Reading reading, bool stuck) =>
        stuck ? Verdict.Stuck
        : basis.IsBadlyCalibrated(sensorKey, quantity, reading.MeasuredAt) ? Verdict.BadCalibration
        : Verdict.Counts;

    private void Note(JudgedReading entry, Verdict verdict)
    {
        if (entry.Verdict != verdict && _noted.Add(entry.Reading.MeasuredAt))
            Changes.Add((new VerdictChange(sensorKey, quantity, entry.Reading.MeasuredAt, verdict), entry.Verdict == Verdict.Pending));
    }
}

/// <summary>What a sensor has in the log is to be judged again, because what it is judged by has changed.</summary>
public sealed class RejudgeOrder
{
    public required Guid Id { get; init; }

    public required Guid SensorId { get; init; }

    /// <summary>The quantity; null for all it measures.</summary>
    public Quantity? Quantity { get; init; }
}

/// <summary>
/// Orders to judge again. Books write them in the transaction that changes a rule or a calibration, in whatever process, so that
/// none is lost between the two.
/// </summary>
public interface IRejudgeBook
{
    /// <summary>Orders not yet carried out, the oldest first.</summary>
    Task<IReadOnlyList<RejudgeOrder>> PendingAsync(CancellationToken cancellationToken);

    /// <summary>Strikes off an order that was carried out.</summary>
    Task DoneAsync(Guid orderId, CancellationToken cancellationToken);
}
