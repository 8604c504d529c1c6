using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Kitchen.Judging;

/// <summary>
/// Tells readings of a sensor that hangs: the same value throughout the day before and longer, although it was heard all the time. The first day
/// counts. Like every verdict it depends on raw readings near it in time only, so that a late reading of another value takes it
/// back. The day is this project's own rule. A quantity that may stand still is left out.
/// </summary>
internal sealed class StuckRun(IReadingLog log, int sensorKey, Quantity quantity)
{
    /// <summary>A sensor heard less often than this may as well have been away.</summary>
    private static readonly Duration HeardEvery = Duration.FromHours(3);

    /// <summary>How far back a verdict looks: a day, and the span in which the day's first reading must lie.</summary>
    public static readonly Duration Reach = Duration.FromDays(1) + HeardEvery;

    private readonly HeardSpan[] _spans = [.. Enumerable.Range(0, (int)(Reach / HeardEvery)).Select(_ => new HeardSpan(log, sensorKey, quantity))];

    /// <summary>Which of <paramref name="readings"/>[<paramref name="first"/>..<paramref name="end"/>) are of a sensor that hangs.</summary>
    public async Task<bool[]> FindAsync(IReadOnlyList<Reading> readings, int first, int end, CancellationToken cancellationToken)
    {
        var stuck = new bool[end - first];
        if (MeasuredQuantity.Of(quantity).MayStandStill || end == first)
            return stuck;
        Instant? lastOther = await LastOtherAsync(readings, first, cancellationToken);
        for (int i = first; i < end; i++)
        {
            if (i > first && readings[i - 1].Value != readings[i].Value)
                lastOther = readings[i - 1].MeasuredAt;
            Instant at = readings[i].MeasuredAt;
            stuck[i - first] = (lastOther is null || lastOther < Bounded.Earlier(at, Reach)) && await WasHeardAllTheTimeAsync(at, cancellationToken);
        }
        return stuck;
    }

    /// <summary>When another value than that of the first was read last within reach.</summary>
    private async Task<Instant?> LastOtherAsync(IReadOnlyList<Reading> readings, int first, CancellationToken cancellationToken)
    {
        Reading reading = readings[first];
        for (int i = first - 1; i >= 0; i--)
            if (readings[i].Value != reading.Value)
                return readings[i].MeasuredAt;
        return await log.LastOtherAsync(
            sensorKey, quantity, reading.Value, Bounded.Earlier(reading.MeasuredAt, Reach), readings[0].MeasuredAt, cancellationToken);
    }

    private async Task<bool> WasHeardAllTheTimeAsync(Instant at, CancellationToken cancellationToken)
    {
        Instant from = Bounded.Earlier(at, Reach);
        for (int span = 0; from < at; span++, from += HeardEvery)
            if (!await _spans[span].WasHeardAsync(from, cancellationToken))
                return false;
        return true;
    }

    /// <summary>
    /// One of the spans of <see cref="HeardEvery"/> before a reading. As the readings move on so does the span, and what was found
    /// in it, or that nothing was, mostly still holds: the log is asked about once a span and not once a reading.
    /// </summary>
    private sealed class HeardSpan(IReadingLog log, int sensorKey, Quantity quantity)
    {
        private Instant? _heard;
        private (Instant From, Instant Until)? _silence;

        public async Task<bool> WasHeardAsync(Instant from, CancellationToken cancellationToken)
        {
            Instant until = from + HeardEvery;
            if (_heard >= from && _heard < until)
                return true;
            if (_silence is { } silence && from >= silence.From && until <= silence.Until)
                return false;
            _heard = await log.LastBetweenAsync(sensorKey, quantity, from, until, cancellationToken);
            if (_heard is not null)
                return true;
            _silence = (from, await log.FirstAsync(sensorKey, quantity, until, Instant.MaxValue, cancellationToken) ?? Instant.MaxValue);
            return false;
        }
    }
}
