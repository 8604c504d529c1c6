using NodaTime;

namespace FermentWatch.Kitchen.Readings;

/// <summary>What the rules and pages read from the reading log, and how they write verdicts.</summary>
public interface IReadingLog
{
    /// <summary>The sensors that have readings without a verdict, and up to where each of them has at present.</summary>
    Task<IReadOnlyList<WaitingReadings>> WaitingAsync(CancellationToken cancellationToken);

    /// <summary>What waits of one sensor, in the order of writing, at most so many.</summary>
    Task<LogSlice> NotYetJudgedAsync(WaitingReadings waiting, int atMost, CancellationToken cancellationToken);

    /// <summary>
    /// Writes verdicts and computes the means of every bucket they touch again, in one transaction. A reading that still waits and
    /// was written after <paramref name="judgedUpTo"/> keeps waiting for its own turn.
    /// </summary>
    Task SettleAsync(IReadOnlyList<VerdictChange> changes, long judgedUpTo, CancellationToken cancellationToken);

    /// <summary>Readings of one sensor and quantity with from &lt;= measured &lt; until, by time of measurement, whatever their verdict.</summary>
    Task<IReadOnlyList<JudgedReading>> ReadAsync(
        int sensorKey, Quantity quantity, Instant from, Instant until, CancellationToken cancellationToken);

    /// <summary>When the first reading with from &lt;= measured &lt; until was measured, whatever its verdict; null where there is none.</summary>
    Task<Instant?> FirstAsync(int sensorKey, Quantity quantity, Instant from, Instant until, CancellationToken cancellationToken);

    /// <summary>
    /// When the last reading with from &lt;= measured &lt; until that has another value was measured, whatever its verdict; null where
    /// there is none.
    /// </summary>
    Task<Instant?> LastOtherAsync(
        int sensorKey, Quantity quantity, double value, Instant from, Instant until, CancellationToken cancellationToken);

    /// <summary>When the last reading with from &lt;= measured &lt; until was measured, whatever its verdict; null where there is none.</summary>
    Task<Instant?> LastBetweenAsync(int sensorKey, Quantity quantity, Instant from, Instant until, CancellationToken cancellationToken);

    /// <summary>When a reading of the sensor was last received, whatever time it bore; null if none ever was.</summary>
    Task<Instant?> LastHeardAsync(int sensorKey, CancellationToken cancellationToken);

    /// <summary>
    /// The reading measured last, for each quantity of the sensor. One that bears a time ahead of when the sensor was last heard
    /// comes only where there is no other.
    /// </summary>
    Task<IReadOnlyList<JudgedReading>> LastAsync(int sensorKey, CancellationToken cancellationToken);

    /// <summary>Means of what counts, for buckets with from &lt;= start &lt; until, by time; buckets without a reading are left out.</summary>
    Task<IReadOnlyList<ReadingMean>> MeansAsync(
        int sensorKey, Quantity quantity, MeanSpan span, Instant from, Instant until, CancellationToken cancellationToken);

    /// <summary>The highest key under which anything was ever filed; 0 where nothing was.</summary>
    Task<int> LastSensorKeyAsync(CancellationToken cancellationToken);

    /// <summary>When the reading that was written last was received; null where there is none.</summary>
    Task<Instant?> LastReceivedAsync(CancellationToken cancellationToken);

    /// <summary>The stamps of the means of some spans, in their order.</summary>
    Task<IReadOnlyList<MeanStamp>> MeanStampsAsync(
        Quantity quantity, MeanSpan span, IReadOnlyList<SensorSpan> spans, CancellationToken cancellationToken);

    /// <summary>How many readings of the sensor have each verdict.</summary>
    Task<IReadOnlyDictionary<Verdict, long>> VerdictCountsAsync(int sensorKey, CancellationToken cancellationToken);

    /// <summary>What could not be used, last first.</summary>
    Task<IReadOnlyList<RejectCount>> RejectsAsync(CancellationToken cancellationToken);

    /// <summary>Grows each time a mean of a quarter hour changes; equal values mean that no forecast needs renewing for the sensors' sake.</summary>
    Task<long> MeansRevisionAsync(CancellationToken cancellationToken);
}
