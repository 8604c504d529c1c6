using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Kitchen.Judging;

/// <summary>Judges readings of one sensor and quantity, with all whose verdict they may change, and writes what is other than before.</summary>
internal sealed class SeriesJudge(IReadingLog log)
{
    /// <summary>Verdicts in one commit: readings that come in wait for no more than this.</summary>
    private const int AtOnce = 4_000;

    /// <summary>How far ahead a run of one value is followed in one step.</summary>
    private static readonly Duration Step = Duration.FromHours(3);

    private static readonly Duration Millisecond = Duration.FromMilliseconds(1);

    /// <summary>Judges readings that wait.</summary>
    /// <param name="sensorKey">The sensor.</param>
    /// <param name="quantity">The quantity.</param>
    /// <param name="measured">Their times in order.</param>
    /// <param name="judgedUpTo">Their place in the order of writing: what was written later keeps waiting.</param>
    /// <param name="basis">What is on record.</param>
    /// <param name="cancellationToken">Gives up.</param>
    public async Task JudgeAsync(
        int sensorKey, Quantity quantity, Instant[] measured, long judgedUpTo, JudgingBasis basis, CancellationToken cancellationToken)
    {
        var span = new JudgedSpan(log, sensorKey, quantity, basis);
        foreach ((Instant first, Instant last) in Stretches(measured))
            await JudgeAroundAsync(span, first, last, cancellationToken);
        // What else waits is judged in its own turn, and must not fail these.
        var own = measured.ToHashSet();
        await SettleAsync(span.Changes.Where(change => !change.Waited || own.Contains(change.Change.MeasuredAt)), judgedUpTo, cancellationToken);
    }

    /// <summary>Judges again what was judged in a span of time. Returns how many verdicts are other than before.</summary>
    public async Task<int> JudgeAgainAsync(
        int sensorKey, Quantity quantity, Instant from, Instant until, long judgedUpTo, JudgingBasis basis, CancellationToken cancellationToken)
    {
        var span = new JudgedSpan(log, sensorKey, quantity, basis);
        await span.JudgeAsync(from, until, cancellationToken);
        return await SettleAsync(span.Changes, judgedUpTo, cancellationToken);
    }

    private async Task JudgeAroundAsync(JudgedSpan span, Instant first, Instant last, CancellationToken cancellationToken)
    {
        Instant until = Bounded.Later(last, ReadingJudge.Reach + Millisecond);
        IReadOnlyList<Reading> judged = await span.JudgeAsync(Bounded.Earlier(first, ReadingJudge.Reach), until, cancellationToken);
        if (MeasuredQuantity.Of(span.Quantity).MayStandStill)
            return;
        // A stuck sensor is told by the day before. Of what follows only the run of one value up to the next other value depends
        // on the new readings: behind that value nothing is stuck, whatever lies further back.
        Instant end = Bounded.Later(last, StuckRun.Reach + Millisecond);
        double? run = null;
        while (IsOneRun(judged.Where(reading => reading.MeasuredAt > last), ref run)
            && await log.FirstAsync(span.SensorKey, span.Quantity, until, end, cancellationToken) is { } next)
        {
            until = Instant.Min(Bounded.Later(next, Step), end);
            judged = await span.JudgeAsync(next, until, cancellationToken);
        }
    }

    private static bool IsOneRun(IEnumerable<Reading> readings, ref double? run)
    {
        foreach (Reading reading in readings)
        {
            run ??= reading.Value;
            if (reading.Value != run)
                return false;
        }
        return true;
    }

    private async Task<int> SettleAsync(
        IEnumerable<(VerdictChange Change, bool Waited)> changes, long judgedUpTo, CancellationToken cancellationToken)
    {
        int written = 0;
        // Those that waited come last: a kill in between leaves them waiting, and their neighbours are judged with them again.
        foreach (var part in changes.OrderBy(change => change.Waited).Chunk(AtOnce))
        {
            await log.SettleAsync([.. part.Select(each => each.Change)], judgedUpTo, cancellationToken);
            written += part.Length;
        }
        return written;
    }

    /// <summary>Spans of time whose neighbourhoods touch, so that one late pack does not reread months.</summary>
    private static List<(Instant First, Instant Last)> Stretches(Instant[] measured)
    {
        var stretches = new List<(Instant First, Instant Last)>();
        foreach (Instant at in measured)
        {
            if (stretches.Count > 0 && at - stretches[^1].Last <= ReadingJudge.Reach * 2)
                stretches[^1] = (stretches[^1].First, at);
            else
                stretches.Add((at, at));
        }
        return stretches;
    }
}
