using NodaTime;

namespace FermentWatch.Kitchen.Readings;

/// <summary>What the rules and pages read from the reading log, and how they write verdicts.</summary>
public interface IReadingLog
{
    /// <summary>Readings written after the place up to which the log has been judged, in the order of writing.</summary>
    Task<LogSlice> NotYetJudgedAsync(int atMost, CancellationToken cancellationToken);

    /// <summary>
    /// Writes verdicts, computes the means of every bucket they touch again, and moves the place up to which the log is judged,
    /// all in one transaction.
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

    /// <summary>The reading measured last, for each quantity of the sensor.</summary>
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
