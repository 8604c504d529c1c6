using System.Collections.Concurrent;
using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Intake.Tests.Doubles;

/// <summary>A reading log in memory that keeps the promises of the port.</summary>
public sealed class MemoryReadingIntake : IReadingIntake
{
    private readonly Lock _gate = new();
    private readonly Dictionary<(int, Quantity, Instant), Reading> _stored = [];
    private readonly List<Reading> _inOrder = [];
    private int _failuresLeft;

    public ConcurrentQueue<Reject> Rejects { get; } = new();

    /// <summary>Held up here before each commit, when set.</summary>
    public Func<Task>? BeforeCommit { get; set; }

    public IReadOnlyList<Reading> Stored
    {
        get
        {
            lock (_gate)
                return [.. _inOrder];
        }
    }

    public void FailNext(int times) => Volatile.Write(ref _failuresLeft, times);

    public async Task<AppendResult> AppendAsync(IReadOnlyList<Reading> readings, CancellationToken cancellationToken)
    {
        if (BeforeCommit is { } wait)
            await wait();
        lock (_gate)
        {
            if (_failuresLeft > 0)
            {
                _failuresLeft--;
                throw new IOException("The disk is full.");
            }
            return Append(readings);
        }
    }

    public Task RejectAsync(Reject reject, CancellationToken cancellationToken)
    {
        Rejects.Enqueue(reject);
        return Task.CompletedTask;
    }

    private AppendResult Append(IReadOnlyList<Reading> readings)
    {
        int stored = 0, duplicates = 0, conflicts = 0;
        foreach (Reading reading in readings)
        {
            Reading row = reading;
            while (row.TimeSource == TimeSource.Arrival && _stored.ContainsKey((row.SensorKey, row.Quantity, row.MeasuredAt)))
                row = row with { MeasuredAt = row.MeasuredAt + Duration.FromMilliseconds(1) };
            if (_stored.TryAdd((row.SensorKey, row.Quantity, row.MeasuredAt), row))
            {
                _inOrder.Add(row);
                stored++;
            }
            else if (_stored[(row.SensorKey, row.Quantity, row.MeasuredAt)].Value.Equals(row.Value))
                duplicates++;
            else
                conflicts++;
        }
        return new AppendResult(stored, duplicates, conflicts);
    }
}
