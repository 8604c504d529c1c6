using NodaTime;

namespace FermentWatch.Kitchen.Readings;

/// <summary>One decoded value as it came in at the door, not yet judged.</summary>
/// <param name="SensorKey">The short key under which the log files the sensor (see Sensors.Sensor.Key).</param>
/// <param name="Quantity">What was measured; fixes the unit of <paramref name="Value"/>.</param>
/// <param name="Value">Finite value in the unit of the quantity.</param>
/// <param name="MeasuredAt">When it was measured, to the millisecond.</param>
/// <param name="ReceivedAt">When it reached our door.</param>
/// <param name="TimeSource">How <paramref name="MeasuredAt"/> is known.</param>
public sealed record Reading(
    int SensorKey, Quantity Quantity, double Value, Instant MeasuredAt, Instant ReceivedAt, TimeSource TimeSource);

/// <summary>How the time of a reading is known.</summary>
public enum TimeSource
{
    /// <summary>No time came with it: the time is that of arrival at our door.</summary>
    Arrival = 1,

    /// <summary>The payload carried an absolute time.</summary>
    Payload = 2,

    /// <summary>The payload carried a time relative to its arrival.</summary>
    PayloadRelative = 3,
}

/// <summary>A reading with the verdict it has at present.</summary>
public sealed record JudgedReading(Reading Reading, Verdict Verdict);

/// <summary>A verdict to be written for one stored reading.</summary>
public sealed record VerdictChange(int SensorKey, Quantity Quantity, Instant MeasuredAt, Verdict Verdict);
