using System.Collections.Concurrent;
using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Intake.Door;

/// <summary>
/// Stands in for what a restart made us forget. A broker that saw no acknowledgement before the restart sends again with the DUP
/// flag; a reading without a time of its own is then the same as one of the sensor's last rows if it has the same value. Each row
/// is matched once.
/// </summary>
public sealed class RowsBeforeStart(IReadingLog log, TimeProvider time)
{
    /// <summary>How far before a sensor's last row the rows reach that may be sent again.</summary>
    public static readonly Duration Reach = RedeliveryMemory.Span;

    private readonly Instant _startedAt = Instant.FromDateTimeOffset(time.GetUtcNow());
    private readonly ConcurrentDictionary<(int Sensor, Quantity Quantity), Lazy<Task<ConcurrentDictionary<double, int>>>> _rows = new();

    /// <summary>Whether a reading that came with the DUP flag is one of the rows from before the start; that row is used up by it.</summary>
    /// <exception cref="IOException">The log could not be read.</exception>
    public async Task<bool> HoldAsync(Reading reading, CancellationToken cancellationToken)
    {
        ConcurrentDictionary<double, int> left = await LeftAsync(reading.SensorKey, reading.Quantity).WaitAsync(cancellationToken);
        while (left.TryGetValue(reading.Value, out int times) && times > 0)
            if (left.TryUpdate(reading.Value, times - 1, times))
                return true;
        return false;
    }

    private async Task<ConcurrentDictionary<double, int>> LeftAsync(int sensorKey, Quantity quantity)
    {
        try
        {
            return await _rows.GetOrAdd(
                (sensorKey, quantity), _ => new Lazy<Task<ConcurrentDictionary<double, int>>>(() => LoadAsync(sensorKey, quantity))).Value;
        }
        catch (IOException)
        {
            // The next redelivery asks the log again.
            _rows.TryRemove((sensorKey, quantity), out _);
            throw;
        }
    }

    private async Task<ConcurrentDictionary<double, int>> LoadAsync(int sensorKey, Quantity quantity)
    {
        var left = new ConcurrentDictionary<double, int>();
        Instant? last = (await log.LastAsync(sensorKey, CancellationToken.None))
            .FirstOrDefault(row => row.Reading.Quantity == quantity)?.Reading.MeasuredAt;
        if (last is not { } until)
            return left;
        Instant from = Instant.Min(until, _startedAt) - Reach;
        Instant end = Instant.Min(until, Instant.MaxValue - Duration.FromMilliseconds(1)) + Duration.FromMilliseconds(1);
        foreach (JudgedReading row in await log.ReadAsync(sensorKey, quantity, from, end, CancellationToken.None))
            if (row.Reading.TimeSource == TimeSource.Arrival && row.Reading.ReceivedAt < _startedAt)
                left.AddOrUpdate(row.Reading.Value, 1, (_, times) => times + 1);
        return left;
    }
}
