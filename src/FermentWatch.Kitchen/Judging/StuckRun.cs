using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Kitchen.Judging;

/// <summary>
/// Tells readings of a sensor that hangs: the same value throughout the day before and longer, although it was heard all the time. The first day
/// counts. Like every verdict it depends on raw readings near it in time only, so that a late reading of another value takes it
/// back. The day is this project's own rule. Air may stay saturated for weeks: humidity is left out.
/// </summary>
internal sealed class StuckRun(IReadingLog log, int sensorKey, Quantity quantity)
{
    /// <summary>A sensor heard less often than this may as well have been away.</summary>
    private static readonly Duration HeardEvery = Duration.FromHours(3);

    /// <summary>How far back a verdict looks: a day, and the span in which the day's first reading must lie.</summary>
    public static readonly Duration Reach = Duration.FromDays(1) + HeardEvery;

    /// <summary>Which of <paramref name="readings"/>[<paramref name="first"/>..<paramref name="end"/>) are of a sensor that hangs.</summary>
    public async Task<bool[]> FindAsync(IReadOnlyList<Reading> readings, int first, int end, CancellationToken cancellationToken)
    {
        var stuck = new bool[end - first];
        if (quantity == Quantity.Humidity || end == first)
            return stuck;
        Instant? lastOther = await LastOtherAsync(readings, first, cancellationToken);
        for (int i = first; i < end; i++)
        {
            if (i > first && readings[i - 1].Value != readings[i].Value)
                lastOther = readings[i - 1].MeasuredAt;
            Instant at = readings[i].MeasuredAt;
            stuck[i - first] = (lastOther is null || lastOther < at - Reach) && await WasHeardAllTheTimeAsync(at, cancellationToken);
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
            sensorKey, quantity, reading.Value, reading.MeasuredAt - Reach, readings[0].MeasuredAt, cancellationToken);
    }

    private async Task<bool> WasHeardAllTheTimeAsync(Instant at, CancellationToken cancellationToken)
    {
        for (Instant from = at - Reach; from < at; from += HeardEvery)
            if (await log.FirstAsync(sensorKey, quantity, from, from + HeardEvery, cancellationToken) is null)
                return false;
        return true;
    }
}
