using System.Collections.Concurrent;
using NodaTime;

namespace FermentWatch.Intake.Door;

/// <summary>Which sensors last said online or offline. Kept in memory only: it is news, not a record.</summary>
public sealed class PresenceBoard
{
    private readonly ConcurrentDictionary<int, SensorPresence> _bySensor = new();

    /// <summary>What the sensor last said; null if it said nothing since the service started.</summary>
    public SensorPresence? Of(int sensorKey) => _bySensor.GetValueOrDefault(sensorKey);

    /// <summary>Notes what a sensor said; saying the same again does not move the time.</summary>
    public void Note(int sensorKey, bool isOnline, Instant at) => _bySensor.AddOrUpdate(
        sensorKey,
        _ => new SensorPresence(isOnline, at),
        (_, before) => before.IsOnline == isOnline ? before : new SensorPresence(isOnline, at));
}

/// <summary>What a sensor, or the last will it left with a broker, last said of itself.</summary>
public sealed record SensorPresence(bool IsOnline, Instant Since);
