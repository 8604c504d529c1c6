using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Storage.Readings.Writing;

/// <summary>
/// Runs of milliseconds known to be taken, one for each sensor and quantity, within one transaction. Without it a burst of bare
/// readings would walk over all those before it for each one.
/// </summary>
internal sealed class TakenRuns
{
    private readonly Dictionary<(int SensorKey, Quantity Quantity), (long FirstMs, long LastMs)> _runs = [];

    /// <summary>What was written may be rolled back: nothing is known to be taken any more.</summary>
    internal void Forget() => _runs.Clear();

    /// <summary>All from first to last are taken.</summary>
    internal void Add(int sensorKey, Quantity quantity, long firstMs, long lastMs)
    {
        var run = (firstMs, lastMs);
        if (_runs.TryGetValue((sensorKey, quantity), out var known) && known.FirstMs <= firstMs && firstMs <= known.LastMs + 1)
            run = (known.FirstMs, Math.Max(known.LastMs, lastMs));
        _runs[(sensorKey, quantity)] = run;
    }

    /// <summary>The instant itself or, within a known run, the millisecond after its end.</summary>
    internal long EndOfRun(int sensorKey, Quantity quantity, long instantMs) =>
        _runs.TryGetValue((sensorKey, quantity), out var run) && run.FirstMs <= instantMs && instantMs <= run.LastMs
            ? run.LastMs + 1
            : instantMs;
}
