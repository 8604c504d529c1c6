using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Intake.Tests.Doubles;

/// <summary>What of the log the door reads, over the rows of a memory intake.</summary>
public sealed class MemoryReadingLog(MemoryReadingIntake intake) : IReadingLog
{
    /// <summary>Reads that fail before one succeeds.</summary>
    public int FailuresLeft { get; set; }

    public Task<IReadOnlyList<JudgedReading>> ReadAsync(
        int sensorKey, Quantity quantity, Instant from, Instant until, CancellationToken cancellationToken) =>
        Task.FromResult<IReadOnlyList<JudgedReading>>(
        [
            .. Rows(sensorKey).Where(row => row.Reading.Quantity == quantity && row.Reading.MeasuredAt >= from && row.Reading.MeasuredAt < until),
        ]);

    public Task<IReadOnlyList<JudgedReading>> LastAsync(int sensorKey, CancellationToken cancellationToken)
    {
        if (FailuresLeft-- > 0)
            return Task.FromException<IReadOnlyList<JudgedReading>>(new IOException("The disk does not answer."));
        return Task.FromResult<IReadOnlyList<JudgedReading>>(
            [.. Rows(sensorKey).GroupBy(row => row.Reading.Quantity).Select(rows => rows.MaxBy(row => row.Reading.MeasuredAt)!)]);
    }

    public Task<Instant?> FirstAsync(int sensorKey, Quantity quantity, Instant from, Instant until, CancellationToken cancellationToken) =>
        throw new NotSupportedException();

    public Task<Instant?> LastOtherAsync(int sensorKey, Quantity quantity, double value, Instant from, Instant until,
        CancellationToken cancellationToken) =>
        throw new NotSupportedException();

    public Task<IReadOnlyList<WaitingReadings>> WaitingAsync(CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task<Instant?> LastBetweenAsync(int sensorKey, Quantity quantity, Instant from, Instant until, CancellationToken cancellationToken) =>
        throw new NotSupportedException();

    public Task<Instant?> LastHeardAsync(int sensorKey, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task<LogSlice> NotYetJudgedAsync(WaitingReadings waiting, int atMost, CancellationToken cancellationToken) =>
        throw new NotSupportedException();

    public Task SettleAsync(IReadOnlyList<VerdictChange> changes, long judgedUpTo, CancellationToken cancellationToken) =>
        throw new NotSupportedException();

    public Task<IReadOnlyList<ReadingMean>> MeansAsync(
        int sensorKey, Quantity quantity, MeanSpan span, Instant from, Instant until, CancellationToken cancellationToken) =>
            throw new NotSupportedException();

    public Task<IReadOnlyDictionary<Verdict, long>> VerdictCountsAsync(int sensorKey, CancellationToken cancellationToken) =>
        throw new NotSupportedException();

    public Task<IReadOnlyList<RejectCount>> RejectsAsync(CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task<int> LastSensorKeyAsync(CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task<Instant?> LastReceivedAsync(CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task<IReadOnlyList<MeanStamp>> MeanStampsAsync(
        Quantity quantity, MeanSpan span, IReadOnlyList<SensorSpan> spans, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task<long> MeansRevisionAsync(CancellationToken cancellationToken) => throw new NotSupportedException();

    private IEnumerable<JudgedReading> Rows(int sensorKey) =>
        intake.Stored.Where(reading => reading.SensorKey == sensorKey).Select(reading => new JudgedReading(reading, Verdict.Pending));
}
