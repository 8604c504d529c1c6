using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Kitchen.Sensors;

/// <summary>When sensors measured a place or jar.</summary>
public static class SensorSpans
{
    /// <summary>The stretches in which any of the sensors measured it, by sensor.</summary>
    public static IEnumerable<SensorSpan> At(IEnumerable<Sensor> sensors, Guid placeOrJar, Instant from, Instant until) =>
        sensors.OrderBy(sensor => sensor.Key).SelectMany(sensor => Of(sensor, placeOrJar, from, until));

    /// <summary>The stretches in which one sensor measured it.</summary>
    public static IEnumerable<SensorSpan> Of(Sensor sensor, Guid placeOrJar, Instant from, Instant until)
    {
        var placements = sensor.Placements.OrderBy(placement => placement.From).ThenBy(placement => placement.Id).ToList();
        for (int i = 0; i < placements.Count; i++)
        {
            if ((placements[i].JarId ?? placements[i].PlaceId) != placeOrJar)
                continue;
            Instant begins = Instant.Max(from, placements[i].From);
            Instant ends = i + 1 < placements.Count ? Instant.Min(until, placements[i + 1].From) : until;
            if (begins < ends)
                yield return new SensorSpan(sensor.Key, begins, ends);
        }
    }
}
