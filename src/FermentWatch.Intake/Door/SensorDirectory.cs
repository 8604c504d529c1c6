using System.Collections.Concurrent;
using FermentWatch.Kitchen.Sensors;

namespace FermentWatch.Intake.Door;

/// <summary>
/// Looks sensors up by their name in topics. A sensor found is remembered for a short while, so that a reading costs no
/// query; one not found is asked for again each time, so that a sensor added by another process works at once.
/// </summary>
public sealed class SensorDirectory(ISensorBook book, TimeProvider time)
{
    /// <summary>How long a sensor that was taken out of service may still be believed in.</summary>
    public static readonly TimeSpan Remembered = TimeSpan.FromSeconds(10);

    private readonly ConcurrentDictionary<string, (Sensor Sensor, long FoundAt)> _found = new(StringComparer.Ordinal);

    /// <summary>The sensor in service with this slug, or null.</summary>
    public async ValueTask<Sensor?> FindAsync(string slug, CancellationToken cancellationToken)
    {
        if (!SensorSlug.IsValid(slug))
            return null;
        if (_found.TryGetValue(slug, out var entry) && time.GetElapsedTime(entry.FoundAt) < Remembered)
            return entry.Sensor;

        Sensor? sensor = await book.FindAsync(slug, cancellationToken);
        if (sensor is null)
            _found.TryRemove(slug, out _);
        else
            _found[slug] = (sensor, time.GetTimestamp());
        return sensor;
    }
}
