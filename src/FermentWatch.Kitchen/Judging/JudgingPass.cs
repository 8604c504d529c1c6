using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Kitchen.Judging;

/// <summary>Judges what was written to the log since the last pass, and judges again the neighbours it may change.</summary>
/// <param name="log">The log.</param>
/// <param name="books">What readings are judged by besides their neighbours; null takes each quantity's own range and nothing else.</param>
public sealed class JudgingPass(IReadingLog log, JudgingBooks? books = null)
{
    /// <summary>Readings taken in one step; bounds memory when weeks of history arrive at once.</summary>
    private const int StepSize = 5000;

    /// <summary>How much of a sensor's history is judged again in one step.</summary>
    private static readonly Duration AgainAtOnce = Duration.FromDays(1);

    /// <summary>Settling this far moves no cursor: what waits for its first verdict keeps waiting.</summary>
    private const long CursorStays = 0;

    private static readonly Duration Millisecond = Duration.FromMilliseconds(1);

    /// <summary>Judges until nothing is left. Returns how many readings were judged, for the first time or to another verdict.</summary>
    public async Task<int> RunAsync(CancellationToken cancellationToken)
    {
        IReadOnlyList<RejudgeOrder> orders = books is null ? [] : await books.OrdersAsync(cancellationToken);
        JudgingBasis basis = books is null ? JudgingBasis.Plain : await books.BasisAsync(cancellationToken);
        int judged = 0;
        foreach (RejudgeOrder order in orders)
            judged += await CarryOutAsync(order, basis, cancellationToken);
        while (true)
        {
            LogSlice slice = await log.NotYetJudgedAsync(StepSize, cancellationToken);
            if (slice.Readings.Count == 0)
                return judged;
            var changes = new List<VerdictChange>();
            foreach (var series in slice.Readings.GroupBy(entry => (entry.Reading.SensorKey, entry.Reading.Quantity)))
                foreach ((Instant from, Instant until) in Stretches(series.Select(entry => entry.Reading.MeasuredAt)))
                    changes.AddRange(await ChangesAsync(series.Key.SensorKey, series.Key.Quantity, from, until, basis, cancellationToken));
            await log.SettleAsync(changes, slice.Cursor, cancellationToken);
            judged += slice.Readings.Count;
        }
    }

    private async Task<int> CarryOutAsync(RejudgeOrder order, JudgingBasis basis, CancellationToken cancellationToken)
    {
        int changed = 0;
        if (await books!.KeyOfAsync(order.SensorId, cancellationToken) is { } key)
            foreach (Quantity quantity in order.Quantity is { } only ? [only] : Enum.GetValues<Quantity>())
                changed += await JudgeAgainAsync(key, quantity, basis, cancellationToken);
        await books.DoneAsync(order, cancellationToken);
        return changed;
    }

    private async Task<int> JudgeAgainAsync(int sensorKey, Quantity quantity, JudgingBasis basis, CancellationToken cancellationToken)
    {
        int changed = 0;
        Instant? from = await log.FirstAsync(sensorKey, quantity, Instant.MinValue, Instant.MaxValue, cancellationToken);
        while (from is { } start)
        {
            Instant until = start + AgainAtOnce;
            List<VerdictChange> changes = await ChangesAsync(sensorKey, quantity, start, until, basis, cancellationToken);
            if (changes.Count > 0)
                await log.SettleAsync(changes, CursorStays, cancellationToken);
            changed += changes.Count;
            from = await log.FirstAsync(sensorKey, quantity, until, Instant.MaxValue, cancellationToken);
        }
        return changed;
    }

    private async Task<List<VerdictChange>> ChangesAsync(
        int sensorKey, Quantity quantity, Instant from, Instant until, JudgingBasis basis, CancellationToken cancellationToken)
    {
        IReadOnlyList<JudgedReading> entries = await log.ReadAsync(
            sensorKey, quantity, from - ReadingJudge.Reach, until + ReadingJudge.Reach, cancellationToken);
        int first = Count(entries, from), end = Count(entries, until);
        var readings = entries.Select(entry => entry.Reading).ToList();
        var verdicts = ReadingJudge.Judge(readings, first, end, basis.RangeOf(sensorKey, quantity)).ToList();
        bool[] stuck = await new StuckRun(log, sensorKey, quantity).FindAsync(readings, first, end, cancellationToken);
        var changes = new List<VerdictChange>();
        for (int i = 0; i < verdicts.Count; i++)
        {
            JudgedReading entry = entries[first + i];
            Verdict verdict = verdicts[i];
            if (verdict == Verdict.Counts)
                verdict = stuck[i] ? Verdict.Stuck
                    : basis.IsBadlyCalibrated(sensorKey, quantity, entry.Reading.MeasuredAt) ? Verdict.BadCalibration : Verdict.Counts;
            if (entry.Verdict != verdict)
                changes.Add(new VerdictChange(sensorKey, quantity, entry.Reading.MeasuredAt, verdict));
        }
        return changes;
    }

    private static int Count(IReadOnlyList<JudgedReading> entries, Instant before) =>
        entries.Count(entry => entry.Reading.MeasuredAt < before);

    /// <summary>Spans of time in which verdicts may change, apart from each other, so that one late pack does not reread months.</summary>
    private static List<(Instant From, Instant Until)> Stretches(IEnumerable<Instant> measured)
    {
        var stretches = new List<(Instant From, Instant Until)>();
        foreach (Instant at in measured.Order())
        {
            // Back as far as a jump is told by what follows, ahead as far as a stuck sensor is told by what went before.
            Instant from = at - ReadingJudge.Reach, until = at + StuckRun.Reach + Millisecond;
            if (stretches.Count > 0 && stretches[^1].Until >= from)
                stretches[^1] = (stretches[^1].From, until);
            else
                stretches.Add((from, until));
        }
        return stretches;
    }
}
