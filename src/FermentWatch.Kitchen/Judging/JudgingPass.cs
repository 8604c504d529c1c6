using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Kitchen.Judging;

/// <summary>
/// Judges what waits in the log, and judges again the neighbours it may change. Sensors take turns, so that one that sends months
/// at once keeps no other waiting. What cannot be judged is set aside and keeps nothing else from being judged.
/// </summary>
/// <param name="log">The log.</param>
/// <param name="books">What readings are judged by besides their neighbours; null takes each quantity's own range and nothing else.</param>
public sealed class JudgingPass(IReadingLog log, JudgingBooks? books = null)
{
    /// <summary>Readings of one sensor taken in one turn; bounds memory, and how long the others wait.</summary>
    private const int TurnSize = 10_000;

    /// <summary>How much of a sensor's history is judged again in one step.</summary>
    private static readonly Duration AgainAtOnce = Duration.FromDays(1);

    /// <summary>Settling this far leaves what waits for its first verdict waiting.</summary>
    private const long OnlyJudged = 0;

    private readonly SeriesJudge _series = new(log);

    /// <summary>What could not be judged since the start.</summary>
    public SetAsideReadings SetAside { get; } = new();

    /// <summary>Raised after each turn: a backlog may take long, and is not hanging as long as turns end.</summary>
    public event Action? TurnEnded;

    /// <summary>
    /// Judges what waits when it begins. Returns how many readings were judged, for the first time or to another verdict. What
    /// comes in meanwhile waits for the next pass.
    /// </summary>
    public async Task<int> RunAsync(CancellationToken cancellationToken)
    {
        IReadOnlyList<RejudgeOrder> orders = books is null ? [] : await books.OrdersAsync(cancellationToken);
        JudgingBasis basis = books is null ? JudgingBasis.Plain : await books.BasisAsync(cancellationToken);
        int judged = 0;
        foreach (RejudgeOrder order in orders)
            judged += await CarryOutAsync(order, basis, cancellationToken);
        var turns = new Queue<WaitingReadings>(await log.WaitingAsync(cancellationToken));
        while (turns.TryDequeue(out WaitingReadings? turn))
        {
            LogSlice slice = await log.NotYetJudgedAsync(turn, TurnSize, cancellationToken);
            foreach (var series in slice.Readings.GroupBy(entry => entry.Reading.Quantity))
                await JudgeAsync(turn.SensorKey, series.Key, [.. series.Select(entry => entry.Reading.MeasuredAt).Order()], slice.Cursor, basis,
                    cancellationToken);
            judged += slice.Readings.Count;
            TurnEnded?.Invoke();
            if (slice.Readings.Count == TurnSize)
                turns.Enqueue(turn with { After = slice.Cursor });
        }
        return judged;
    }

    /// <summary>Judges readings of one series; where that fails, its halves, down to the one that fails.</summary>
    private async Task JudgeAsync(
        int sensorKey, Quantity quantity, Instant[] measured, long judgedUpTo, JudgingBasis basis, CancellationToken cancellationToken)
    {
        try
        {
            await _series.JudgeAsync(sensorKey, quantity, measured, judgedUpTo, basis, cancellationToken);
        }
        catch (Exception trouble) when (IsOfTheReadings(trouble))
        {
            if (measured.Length > 1)
            {
                int half = measured.Length / 2;
                await JudgeAsync(sensorKey, quantity, measured[..half], judgedUpTo, basis, cancellationToken);
                await JudgeAsync(sensorKey, quantity, measured[half..], judgedUpTo, basis, cancellationToken);
                return;
            }
            await SetAsideAsync(new SetAsideReading(sensorKey, quantity, measured[0], trouble.Message), judgedUpTo, cancellationToken);
        }
    }

    private async Task SetAsideAsync(SetAsideReading reading, long judgedUpTo, CancellationToken cancellationToken)
    {
        SetAside.Add(reading);
        try
        {
            var change = new VerdictChange(reading.SensorKey, reading.Quantity, reading.MeasuredAt, Verdict.SetAside);
            await log.SettleAsync([change], judgedUpTo, cancellationToken);
        }
        catch (Exception trouble) when (IsOfTheReadings(trouble))
        {
            // Not even that can be written for it. It keeps waiting, and the next pass sets it aside again.
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
            Instant until = Bounded.Later(start, AgainAtOnce);
            try
            {
                changed += await _series.JudgeAgainAsync(sensorKey, quantity, start, until, OnlyJudged, basis, cancellationToken);
            }
            catch (Exception trouble) when (IsOfTheReadings(trouble))
            {
                SetAside.Add(new SetAsideReading(sensorKey, quantity, start, trouble.Message));
            }
            from = await log.FirstAsync(sensorKey, quantity, until, Instant.MaxValue, cancellationToken);
        }
        return changed;
    }

    /// <summary>A log that cannot be read or written at all is no fault of a reading: the pass fails and is tried again.</summary>
    private static bool IsOfTheReadings(Exception trouble) => trouble is not (OperationCanceledException or IOException or ObjectDisposedException);
}
