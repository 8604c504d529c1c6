using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Kitchen.Judging;

/// <summary>Judges what was written to the log since the last pass, and judges again the neighbours it may change.</summary>
public sealed class JudgingPass(IReadingLog log)
{
    /// <summary>Readings taken in one step; bounds memory when weeks of history arrive at once.</summary>
    private const int StepSize = 5000;

    /// <summary>Judges until nothing is left. Returns how many readings were new.</summary>
    public async Task<int> RunAsync(CancellationToken cancellationToken)
    {
        int judged = 0;
        while (true)
        {
            LogSlice slice = await log.NotYetJudgedAsync(StepSize, cancellationToken);
            if (slice.Readings.Count == 0)
                return judged;
            var changes = new List<VerdictChange>();
            foreach (var series in slice.Readings.GroupBy(entry => (entry.Reading.SensorKey, entry.Reading.Quantity)))
                changes.AddRange(await ChangesAsync(series.Key.SensorKey, series.Key.Quantity, series, cancellationToken));
            await log.SettleAsync(changes, slice.Cursor, cancellationToken);
            judged += slice.Readings.Count;
        }
    }

    private async Task<IEnumerable<VerdictChange>> ChangesAsync(
        int sensorKey, Quantity quantity, IEnumerable<JudgedReading> written, CancellationToken cancellationToken)
    {
        var changes = new List<VerdictChange>();
        foreach ((Instant from, Instant until) in Stretches(written.Select(entry => entry.Reading.MeasuredAt)))
        {
            IReadOnlyList<JudgedReading> entries = await log.ReadAsync(
                sensorKey, quantity, from - ReadingJudge.Reach, until + ReadingJudge.Reach, cancellationToken);
            int first = Count(entries, from), end = Count(entries, until);
            var readings = entries.Select(entry => entry.Reading).ToList();
            foreach ((JudgedReading entry, Verdict verdict) in entries.Skip(first).Zip(ReadingJudge.Judge(readings, first, end)))
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
            Instant from = at - ReadingJudge.Reach, until = at + ReadingJudge.Reach + Duration.FromMilliseconds(1);
            if (stretches.Count > 0 && stretches[^1].Until >= from)
                stretches[^1] = (stretches[^1].From, until);
            else
                stretches.Add((from, until));
        }
        return stretches;
    }
}
