using FermentWatch.Kitchen.Readings;
using FermentWatch.Storage.Readings.Forwarding;
using FermentWatch.Storage.Readings.Histories;
using FermentWatch.Storage.Readings.Writing;

namespace FermentWatch.Storage.Readings;

/// <summary>
/// The reading log, readings.db: the door by which readings come in (this), and what is read from it (<see cref="Log"/>).
/// One writer, any number of readers; readers never hold the writer up.
/// </summary>
public sealed class ReadingStore : IReadingIntake, IAsyncDisposable
{
    private static readonly TimeSpan LockPatience = TimeSpan.FromSeconds(5);

    private readonly LogWriter _writer;
    private readonly LogReader _reader;

    private ReadingStore(string path, TimeSpan lockPatience)
    {
        _writer = new LogWriter(path, lockPatience);
        _reader = new LogReader(path);
        Log = new ReadingLog(_reader, _writer);
        Histories = new ReadingHistories(_reader);
        Counted = new CountedReadings(_reader);
        Estimates = new EstimateLog(_reader, _writer);
        ForwardCursors = new ForwardCursors(_reader, _writer);
    }

    /// <summary>What the rules and pages read.</summary>
    public ReadingLog Log { get; }

    /// <summary>What was measured over any span, in points.</summary>
    public ReadingHistories Histories { get; }

    /// <summary>The readings that are passed on.</summary>
    public CountedReadings Counted { get; }

    /// <summary>The estimates that are passed on.</summary>
    public EstimateLog Estimates { get; }

    /// <summary>Up to where each series has been passed on.</summary>
    public ForwardCursors ForwardCursors { get; }

    /// <summary>Transactions committed since the start; fewer than groups appended where groups were committed together.</summary>
    public long Commits => _writer.Commits;

    /// <summary>Opens the log at a path and makes a new one where there is none.</summary>
    /// <exception cref="DatabaseRefusedException">What is at the path is not ours, not whole or from a newer version.</exception>
    /// <exception cref="IOException">The file or its folder cannot be read or written.</exception>
    public static ReadingStore Open(string path) => Open(path, LockPatience);

    /// <inheritdoc cref="Open(string)"/>
    /// <param name="path">Where the log is.</param>
    /// <param name="lockPatience">How long a commit waits for another process that holds the file.</param>
    internal static ReadingStore Open(string path, TimeSpan lockPatience)
    {
        ReadingSchema.CreateOrCheck(path);
        return new ReadingStore(path, lockPatience);
    }

    /// <inheritdoc/>
    /// <exception cref="ArgumentException">A value is not finite: the door must not pass it on.</exception>
    /// <exception cref="OperationCanceledException">Cancelled before the writer took the group; nothing of it was stored.</exception>
    public Task<AppendResult> AppendAsync(IReadOnlyList<Reading> readings, CancellationToken cancellationToken)
    {
        foreach (var reading in readings)
        {
            if (!double.IsFinite(reading.Value))
                throw new ArgumentException($"Sensor {reading.SensorKey}: {reading.Quantity} is {reading.Value}; a reading is a finite number.",
                    nameof(readings));
        }

        return readings.Count == 0
            ? Task.FromResult(default(AppendResult))
            : _writer.RunAsync(
                new WriteJob<AppendResult>(readings.Count, session => AppendGroup.Write(session, readings)), cancellationToken);
    }

    /// <inheritdoc/>
    /// <exception cref="IOException">The log could not be written; nothing was counted.</exception>
    public Task RejectAsync(Reject reject, CancellationToken cancellationToken) =>
        _writer.RunAsync(
            new WriteJob<long>(1, session =>
            {
                session.Rejects.Count(reject);
                return 1;
            }),
            cancellationToken);

    /// <summary>Commits what waits, then closes the file and leaves no journal.</summary>
    public async ValueTask DisposeAsync()
    {
        // The writer last: only a connection that may write copies the journal in as it closes.
        _reader.Dispose();
        await _writer.DisposeAsync().ConfigureAwait(false);
    }
}
