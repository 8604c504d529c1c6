using System.Globalization;
using FermentWatch.Intake.Topics;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Kitchen.Topics;
using Json.Pointer;

namespace FermentWatch.Intake.Sources;

/// <summary>A source rule made ready for use.</summary>
public sealed class SourceReader
{
    private SourceReader(SourceRule rule, SourceFilter filter)
    {
        Rule = rule;
        Filter = filter;
        Unit = MeasureUnit.Find(rule.Unit);
        Value = Pointer(rule.ValuePointer);
        UnitPlace = Pointer(rule.UnitPointer);
        TimePlace = Pointer(rule.TimePointer);
    }

    public SourceRule Rule { get; }

    public SourceFilter Filter { get; }

    /// <summary>The unit of its values where the document does not say.</summary>
    public MeasureUnit? Unit { get; }

    internal JsonPointer? Value { get; }

    internal JsonPointer? UnitPlace { get; }

    internal JsonPointer? TimePlace { get; }

    /// <summary>Makes a rule ready.</summary>
    /// <exception cref="ArgumentException">The rule is wrong; the message says everything that is.</exception>
    public static SourceReader Of(SourceRule rule)
    {
        string[] errors = [.. Errors(rule)];
        return errors.Length == 0
            ? new SourceReader(rule, SourceFilter.Parse(rule.TopicFilter, out _)!)
            : throw new ArgumentException(string.Join(" ", errors), nameof(rule));
    }

    /// <summary>Everything wrong with a rule: what, what came, what would be right.</summary>
    public static IEnumerable<string> Errors(SourceRule rule)
    {
        SourceFilter? filter = SourceFilter.Parse(rule.TopicFilter, out string? wrong);
        if (wrong is not null)
            yield return wrong;
        if (OwnTopic.IsOwn(rule.TopicFilter))
            yield return $"Topics under {OwnTopics.Sensors} need no rule.";
        bool givesSensor = rule.SensorSlug is not null;
        if (filter is not null && filter.NamesDevice == givesSensor)
            yield return filter.NamesDevice
                ? $"The topic names the sensor at {SourceFilter.DevicePlace}; no other sensor can be given."
                : $"Give the sensor, or put {SourceFilter.DevicePlace} where the topic names it.";
        if (rule.SensorSlug is { } slug && !Kitchen.Sensors.SensorSlug.IsValid(slug))
            yield return $"The sensor is '{slug}'; lower case letters, digits and hyphens belong here.";
        foreach (string error in PayloadErrors(rule).Concat(NumberErrors(rule)))
            yield return error;
    }

    private static IEnumerable<string> PayloadErrors(SourceRule rule)
    {
        bool json = rule.Payload == SourcePayload.Json, pack = rule.Payload == SourcePayload.SenMl;
        bool pointsToValue = rule.ValuePointer is not null, pointsToTime = rule.TimePointer is not null, saysQuantity = rule.Quantity is not null;
        if (json != pointsToValue)
            yield return json
                ? "A JSON document needs a pointer to its value, like /temperature."
                : "A pointer to a value belongs to a JSON document only.";
        foreach (string? pointer in (string?[])[rule.ValuePointer, rule.UnitPointer, rule.TimePointer])
            if (pointer is not null && !JsonPointer.TryParse(pointer, out _))
                yield return $"'{pointer}' is no JSON Pointer; one begins with a slash, like /climate/temperature.";
        if (pack == saysQuantity)
            yield return pack
                ? "The units of a SenML pack say what it measures; no quantity can be given."
                : $"The quantity is missing; {MeasuredQuantity.NamesInWords} belongs here.";
        if (rule.Unit is not null && MeasureUnit.Find(rule.Unit) is null)
            yield return $"The unit is '{rule.Unit}'; {string.Join(", ", MeasureUnit.All)} are known.";
        if (MeasureUnit.Find(rule.Unit) is { } unit && rule.Quantity is { } quantity && unit.Quantity != quantity)
            yield return $"{unit} is not a unit of {MeasuredQuantity.Of(quantity).Name}.";
        if (!pack && rule.Unit is null && rule.UnitPointer is null)
            yield return "The unit is missing, and no pointer says where the document has it.";
        bool timeIsInside = rule.Time != SourceTime.Arrival;
        if (timeIsInside != pointsToTime || (timeIsInside && !json))
            yield return "A time needs a JSON document and a pointer to it, and a pointer to a time needs its kind.";
        if (rule.RecordName is not null && !pack)
            yield return "The name of records belongs to a SenML pack only.";
    }

    private static IEnumerable<string> NumberErrors(SourceRule rule)
    {
        foreach ((string name, double? value) in (IEnumerable<(string, double?)>)
            [("offset", rule.Offset), ("smallest plausible value", rule.PlausibleLow), ("largest plausible value", rule.PlausibleHigh)])
            if (value is { } given && !double.IsFinite(given))
                yield return $"The {name} is {given.ToString(CultureInfo.InvariantCulture)}; a number belongs here.";
        if (rule.PlausibleLow >= rule.PlausibleHigh)
            yield return "The smallest plausible value is not below the largest.";
        if (rule.LongestSilence is { } silence && silence <= NodaTime.Duration.Zero)
            yield return "The longest silence must be above zero.";
    }

    private static JsonPointer? Pointer(string? text) => text is null ? null : JsonPointer.Parse(text);
}

/// <inheritdoc/>
public sealed class SourceRuleCheck : ISourceRuleCheck
{
    public IEnumerable<string> Errors(SourceRule rule) => SourceReader.Errors(rule);
}
