using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Storage.Readings.Writing;

/// <summary>When each sensor was last heard, by when its readings were received, whatever times they bear.</summary>
internal sealed class HeardRows(WriteSession session)
{
    private readonly SqlStatement _note = session.Prepare(
        """
        INSERT INTO heard(sensor, received_ms) VALUES($1, $2)
        ON CONFLICT(sensor) DO UPDATE SET received_ms = max(received_ms, excluded.received_ms)
        """);
    private readonly Dictionary<int, long> _latest = [];

    /// <summary>Notes a reading; written at the end of the transaction.</summary>
    internal void Note(Reading reading)
    {
        long received = reading.ReceivedAt.ToUnixTimeMilliseconds();
        if (!_latest.TryGetValue(reading.SensorKey, out long latest) || received > latest)
            _latest[reading.SensorKey] = received;
    }

    /// <summary>Writes what was noted since the last time.</summary>
    internal void Flush()
    {
        foreach ((int sensorKey, long received) in _latest)
            _note.Run(sensorKey, received);
        _latest.Clear();
    }
}
