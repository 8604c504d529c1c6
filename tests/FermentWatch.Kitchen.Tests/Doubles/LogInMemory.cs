using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Doubles;

/// <summary>One sensor's temperature log in memory, as far as the judging pass needs it.</summary>
internal sealed class LogInMemory : IReadingLog
{
    private readonly SortedDictionary<Instant, JudgedReading> _entries = [];
    private readonly List<Instant> _written = [];
    private int _judged;

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

    public Task<LogSlice> NotYetJudgedAsync(int atMost, CancellationToken cancellationToken)
    {
        var slice = _written.Skip(_judged).Take(atMost).ToList();
        return Task.FromResult(new LogSlice([.. slice.Select(at => _entries[at])], _judged + slice.Count));
    }

    public Task SettleAsync(IReadOnlyList<VerdictChange> changes, long judgedUpTo, CancellationToken cancellationToken)
    {
        var waiting = _written.Skip((int)Math.Max(judgedUpTo, _judged)).ToHashSet();
        foreach (VerdictChange change in changes.Where(change => !waiting.Contains(change.MeasuredAt)))
            _entries[change.MeasuredAt] = _entries[change.MeasuredAt] with { Verdict = change.Verdict };
        _judged = (int)Math.Max(judgedUpTo, _judged);
        return Task.CompletedTask;
    }

    public Task<IReadOnlyList<JudgedReading>> ReadAsync(int sensorKey, Quantity quantity, Instant from, Instant until, CancellationToken cancellationToken) =>
        Task.FromResult<IReadOnlyList<JudgedReading>>([.. _entries.Values.Where(entry => entry.Reading.MeasuredAt >= from && entry.Reading.MeasuredAt < until)]);

    public Task<Instant?> FirstAsync(int sensorKey, Quantity quantity, Instant from, Instant until, CancellationToken cancellationToken) =>
        Task.FromResult(Within(sensorKey, quantity, from, until).Select(reading => (Instant?)reading.MeasuredAt).FirstOrDefault());

    public Task<Instant?> LastOtherAsync(int sensorKey, Quantity quantity, double value, Instant from, Instant until, CancellationToken cancellationToken) =>
        Task.FromResult(Within(sensorKey, quantity, from, until).Where(reading => reading.Value != value).Select(reading => (Instant?)reading.MeasuredAt).LastOrDefault());

    public Task<IReadOnlyList<JudgedReading>> LastAsync(int sensorKey, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task<IReadOnlyList<ReadingMean>> MeansAsync(int sensorKey, Quantity quantity, MeanSpan span, Instant from, Instant until, CancellationToken cancellationToken) =>
        throw new NotSupportedException();

    public Task<IReadOnlyDictionary<Verdict, long>> VerdictCountsAsync(int sensorKey, CancellationToken cancellationToken) => throw new NotSupportedException();

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
