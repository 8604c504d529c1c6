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

/// <summary>A rule has fed a sensor: what a rule says of range and silence holds for the sensors it has fed.</summary>
/// <param name="RuleId">The rule.</param>
/// <param name="SensorId">The sensor.</param>
public sealed record SourceFeed(Guid RuleId, Guid SensorId);

/// <summary>What the payload of a source is.</summary>
public enum SourcePayload
{
    /// <summary>One number and nothing else.</summary>
    Number = 1,

    /// <summary>A JSON document with the value at a place in it.</summary>
    Json = 2,

    /// <summary>A SenML pack in JSON (RFC 8428).</summary>
    SenMl = 3,
}

/// <summary>How the payload of a source says when it was measured.</summary>
public enum SourceTime
{
    /// <summary>It does not: the time is that of arrival. SenML packs follow their own rule.</summary>
    Arrival = 0,

    /// <summary>Seconds since the Unix epoch, possibly with a fraction.</summary>
    UnixSeconds = 1,

    /// <summary>Milliseconds since the Unix epoch.</summary>
    UnixMilliseconds = 2,

    /// <summary>ISO 8601 with an offset or Z.</summary>
    Iso8601 = 3,
}

/// <summary>Whoever reads payloads by rules says beforehand whether a rule can be read by.</summary>
public interface ISourceRuleCheck
{
    /// <summary>Everything that is wrong with a rule, and what would be right; empty where it can be used.</summary>
    IEnumerable<string> Errors(SourceRule rule);
}

/// <summary>The record of rules for sensors that were not made for us.</summary>
public interface ISourceRuleBook
{
    /// <summary>All rules, in the order in which they were added.</summary>
    Task<IReadOnlyList<SourceRule>> AllAsync(CancellationToken cancellationToken);

    /// <summary>Adds a rule; where it narrows what is plausible, what its sensor has in the log is to be judged again.</summary>
    Task AddAsync(SourceRule rule, CancellationToken cancellationToken);

    /// <summary>Removes a rule; what it stored stays, and is to be judged again without it. False if there is no such rule.</summary>
    Task<bool> RemoveAsync(Guid ruleId, CancellationToken cancellationToken);

    /// <summary>Which rule has fed which sensor.</summary>
    Task<IReadOnlyList<SourceFeed>> FeedsAsync(CancellationToken cancellationToken);

    /// <summary>Notes that a rule feeds a sensor; noting it again, or of a rule that is gone, changes nothing.</summary>
    Task NoteFeedAsync(SourceFeed feed, CancellationToken cancellationToken);
}
