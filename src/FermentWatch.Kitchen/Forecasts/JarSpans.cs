using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Kitchen.Forecasts;

/// <summary>Which sensor measured a jar over which stretch, and no other: its own probe, and what stood where it stood.</summary>
public static class JarSpans
{
    /// <summary>What was measured in the jar itself.</summary>
    public static IReadOnlyList<SensorSpan> InJar(Jar jar, IReadOnlyList<Sensor> sensors, Instant from, Instant until) =>
        [.. SensorSpans.At(sensors, jar.Id, from, until)];

    /// <summary>What was measured around it, place after place from its packing on; a move counts from its quarter hour.</summary>
    public static IReadOnlyList<SensorSpan> Around(Jar jar, IReadOnlyList<Sensor> sensors, Instant from, Instant until)
    {
        Instant begins = Instant.Max(from, QuarterHour.Floor(jar.PackedAt));
        return [.. Surroundings.Stays(jar, begins, until).SelectMany(stay => SensorSpans.At(sensors, stay.PlaceId, stay.From, stay.Until))];
    }

    /// <summary>Joins the spans of each sensor that touch or overlap, in the order of the sensors' keys.</summary>
    internal static IEnumerable<SensorSpan> Joined(IEnumerable<SensorSpan> spans)
    {
        SensorSpan? open = null;
        foreach (SensorSpan span in spans.OrderBy(span => span.SensorKey).ThenBy(span => span.From))
        {
            if (open is { } before && before.SensorKey == span.SensorKey && span.From <= before.Until)
            {
                open = before with { Until = Instant.Max(before.Until, span.Until) };
                continue;
            }
            if (open is { } whole)
                yield return whole;
            open = span;
        }
        if (open is { } last)
            yield return last;
    }
}
