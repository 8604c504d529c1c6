using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Kitchen.Sensors;

/// <summary>How to read a sensor that was not made for us. One topic may have several rules, for several probes or quantities.</summary>
public sealed class SourceRule
{
    public required Guid Id { get; init; }

    /// <summary>
    /// MQTT topic filter. The level <c>{device}</c>, if there is one, stands for any one level, and what is there names the sensor.
    /// </summary>
    public required string TopicFilter { get; init; }

    /// <summary>The slug of the sensor it feeds; null where <c>{device}</c> in the filter names it.</summary>
    public string? SensorSlug { get; init; }

    public required SourcePayload Payload { get; init; }

    /// <summary>What is measured; null for a SenML pack, whose units say it.</summary>
    public Quantity? Quantity { get; init; }

    /// <summary>JSON Pointer (RFC 6901) to the value, for JSON.</summary>
    public string? ValuePointer { get; init; }

    /// <summary>The unit of the value, as SenML writes it or <c>degF</c>; null where a sibling field or SenML says it.</summary>
    public string? Unit { get; init; }

    /// <summary>JSON Pointer to the unit, where the document carries it; <see cref="Unit"/> stands in where it is missing.</summary>
    public string? UnitPointer { get; init; }

    public SourceTime Time { get; init; }

    /// <summary>JSON Pointer to the time, unless it is that of arrival.</summary>
    public string? TimePointer { get; init; }

    /// <summary>For a SenML pack of several devices: only records whose resolved name begins with this.</summary>
    public string? RecordName { get; init; }

    /// <summary>Added to every value, in the unit in which the quantity is stored; not to a sentinel. 0 as a rule.</summary>
    public double Offset { get; init; }

    /// <summary>Smallest value this source can plausibly show, in the unit in which the quantity is stored; null: that of its quantity.</summary>
    public double? PlausibleLow { get; init; }

    /// <summary>Largest value this source can plausibly show; null: that of its quantity.</summary>
    public double? PlausibleHigh { get; init; }

    /// <summary>How long it may be silent before that is noticed; null: judged by its own rhythm.</summary>
    public Duration? LongestSilence { get; init; }
}
