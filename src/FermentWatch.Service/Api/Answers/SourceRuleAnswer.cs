using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Service.Api.Answers;

/// <summary>How a sensor that was not made for us is read.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Topic">Topic filter; <c>{device}</c> names the sensor.</param>
/// <param name="Sensor">The sensor it feeds; null where the topic names it.</param>
/// <param name="Payload">What the payload is.</param>
/// <param name="Quantity">What is measured; null for a SenML pack.</param>
/// <param name="ValueAt">JSON Pointer to the value.</param>
/// <param name="Unit">The unit.</param>
/// <param name="UnitAt">JSON Pointer to the unit.</param>
/// <param name="Time">How the payload says when.</param>
/// <param name="TimeAt">JSON Pointer to the time.</param>
/// <param name="Record">What names of records begin with.</param>
/// <param name="OffsetInUnitOfQuantity">Added to every value.</param>
/// <param name="LowInUnitOfQuantity">Smallest plausible value.</param>
/// <param name="HighInUnitOfQuantity">Largest plausible value.</param>
/// <param name="LongestSilence">Longest silence.</param>
public sealed record SourceRuleAnswer(
    Guid Id, string Topic, string? Sensor, SourcePayload Payload, Quantity? Quantity, string? ValueAt, string? Unit, string? UnitAt, SourceTime Time,
    string? TimeAt, string? Record, double OffsetInUnitOfQuantity, double? LowInUnitOfQuantity, double? HighInUnitOfQuantity, Duration? LongestSilence)
{
    public static SourceRuleAnswer Of(SourceRule rule) => new(
        rule.Id, rule.TopicFilter, rule.SensorSlug, rule.Payload, rule.Quantity, rule.ValuePointer, rule.Unit, rule.UnitPointer, rule.Time,
        rule.TimePointer, rule.RecordName, rule.Offset, rule.PlausibleLow, rule.PlausibleHigh, rule.LongestSilence);
}
