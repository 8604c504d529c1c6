using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Doubles;

/// <summary>One sensor's temperature log in memory, as far as the judging pass needs it.</summary>
internal sealed class LogInMemory : IReadingLog
{
    private readonly SortedDictionary<Instant, JudgedReading> _entries = [];
    private readonly List<Instant> _written = [];

    public IEnumerable<JudgedReading> All => _entries.Values;

    public void Write(IEnumerable<Reading> readings)
    {
        foreach (Reading reading in readings)
        {
            _entries[reading.MeasuredAt] = new JudgedReading(reading, Verdict.Pending);
            _written.Add(reading.MeasuredAt);
        }
    }

    public Verdict VerdictAt(Instant at) => _entries[at].Verdict;

    /// <summary>Asked before verdicts are written; what it throws stands for a row that cannot be written.</summary>
    public Action<IReadOnlyList<VerdictChange>> BeforeSettling { get; set; } = _ => { };

    public Task<IReadOnlyList<WaitingReadings>> WaitingAsync(CancellationToken cancellationToken) =>
        Task.FromResult<IReadOnlyList<WaitingReadings>>([.. _entries.Values.Where(entry => entry.Verdict == Verdict.Pending)
            .Select(entry => entry.Reading.SensorKey).Distinct().Order().Select(sensor => new WaitingReadings(sensor, 0, _written.Count))]);

    public Task<LogSlice> NotYetJudgedAsync(WaitingReadings waiting, int atMost, CancellationToken cancellationToken)
    {
        var slice = _written.Select((at, index) => (Entry: _entries[at], Place: index + 1L))
            .Where(row => row.Place > waiting.After && row.Place <= waiting.UpTo && row.Entry.Verdict == Verdict.Pending
                && row.Entry.Reading.SensorKey == waiting.SensorKey)
            .Take(atMost).ToList();
        return Task.FromResult(new LogSlice([.. slice.Select(row => row.Entry)], slice.Count > 0 ? slice[^1].Place : waiting.After));
    }

    public Task SettleAsync(IReadOnlyList<VerdictChange> changes, long judgedUpTo, CancellationToken cancellationToken)
    {
        BeforeSettling(changes);
        var later = _written.Skip((int)judgedUpTo).ToHashSet();
        foreach (VerdictChange change in changes)
            if (_entries[change.MeasuredAt] is var entry && !(entry.Verdict == Verdict.Pending && later.Contains(change.MeasuredAt)))
                _entries[change.MeasuredAt] = entry with { Verdict = change.Verdict };
        return Task.CompletedTask;
    }

    public Task<IReadOnlyList<JudgedReading>> ReadAsync(int sensorKey, Quantity quantity, Instant from, Instant until,
        CancellationToken cancellationToken) =>
        Task.FromResult<IReadOnlyList<JudgedReading>>(
            [.. _entries.Values.Where(entry => entry.Reading.MeasuredAt >= from && entry.Reading.MeasuredAt < until)]);

    public Task<Instant?> FirstAsync(int sensorKey, Quantity quantity, Instant from, Instant until, CancellationToken cancellationToken) =>
        Task.FromResult(Within(sensorKey, quantity, from, until).Select(reading => (Instant?)reading.MeasuredAt).FirstOrDefault());

    public Task<Instant?> LastOtherAsync(int sensorKey, Quantity quantity, double value, Instant from, Instant until,
        CancellationToken cancellationToken) =>
        Task.FromResult(Within(sensorKey, quantity, from, until).Where(reading => reading.Value != value)
            .Select(reading => (Instant?)reading.MeasuredAt).LastOrDefault());

    public Task<Instant?> LastBetweenAsync(int sensorKey, Quantity quantity, Instant from, Instant until, CancellationToken cancellationToken) =>
        Task.FromResult(Within(sensorKey, quantity, from, until).Select(reading => (Instant?)reading.MeasuredAt).LastOrDefault());

    public Task<Instant?> LastHeardAsync(int sensorKey, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task<IReadOnlyList<JudgedReading>> LastAsync(int sensorKey, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task<IReadOnlyList<ReadingMean>> MeansAsync(int sensorKey, Quantity quantity, MeanSpan span, Instant from, Instant until,
        CancellationToken cancellationToken) =>
        throw new NotSupportedException();

    public Task<IReadOnlyDictionary<Verdict, long>> VerdictCountsAsync(int sensorKey, CancellationToken cancellationToken) =>
        throw new NotSupportedException();

    public Task<IReadOnlyList<RejectCount>> RejectsAsync(CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task<int> LastSensorKeyAsync(CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task<Instant?> LastReceivedAsync(CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task<IReadOnlyList<MeanStamp>> MeanStampsAsync(
        Quantity quantity, MeanSpan span, IReadOnlyList<SensorSpan> spans, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task<long> MeansRevisionAsync(CancellationToken cancellationToken) => throw new NotSupportedException();

    private IEnumerable<Reading> Within(int sensorKey, Quantity quantity, Instant from, Instant until) => _entries.Values
        .Select(entry => entry.Reading)
        .Where(reading => reading.SensorKey == sensorKey && reading.Quantity == quantity && reading.MeasuredAt >= from && reading.MeasuredAt < until);
}
