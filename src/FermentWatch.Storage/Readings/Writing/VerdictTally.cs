using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Storage.Readings.Writing;

/// <summary>How many readings of each sensor have each verdict, kept with the readings so that a page need not count millions.</summary>
internal sealed class VerdictTally(WriteSession session)
{
    private readonly SqlStatement _add = session.Prepare(
        """
        INSERT INTO verdict_count(sensor, verdict, count) VALUES($1, $2, $3)
        ON CONFLICT(sensor, verdict) DO UPDATE SET count = count + excluded.count
        """);
    private readonly Dictionary<(int SensorKey, Verdict Verdict), long> _changes = [];

    /// <summary>Counts readings in (or out, below zero); written at the end of the transaction.</summary>
    internal void Add(int sensorKey, Verdict verdict, int readings)
    {
        _changes.TryGetValue((sensorKey, verdict), out long sum);
        _changes[(sensorKey, verdict)] = sum + readings;
    }

    /// <summary>Writes what was counted since the last time.</summary>
    internal void Flush()
    {
        foreach (var ((sensorKey, verdict), change) in _changes)
        {
            if (change != 0)
                _add.Run(sensorKey, (int)verdict, change);
        }

        _changes.Clear();
    }
}
