using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Kitchen.Sensors;

/// <summary>Something unknown that looks like a sensor: "Use this sensor?"</summary>
/// <param name="Topic">The topic it reports on.</param>
/// <param name="ValuePointer">JSON Pointer to the value; null for a bare number.</param>
/// <param name="Quantity">What it seems to measure.</param>
/// <param name="UnitSymbol">The unit the value seems to be in.</param>
/// <param name="Value">The last value, in that unit.</param>
/// <param name="LastSeen">When it came.</param>
/// <param name="Times">How often the topic was heard.</param>
/// <param name="SuggestedSlug">A name for it in topics, made of its own; the name by which a rule knows it, where one reads it.</param>
/// <param name="ReadByRule">Whether a rule reads it already, and only the sensor is missing.</param>
public sealed record Offer(
    string Topic, string? ValuePointer, Quantity Quantity, string UnitSymbol, double Value, Instant LastSeen, long Times, string SuggestedSlug,
    bool ReadByRule = false)
{
    /// <summary>The value in the unit in which its quantity is stored, if the guess is right.</summary>
    public double StoredValue => MeasureUnit.Find(UnitSymbol)!.ToStored(Value);

    /// <summary>The rule by which it becomes the source of a sensor.</summary>
    /// <param name="sensorSlug">The sensor it feeds from now on.</param>
    /// <param name="unit">The unit, where the guess was wrong; null takes the guess.</param>
    public SourceRule ToRule(string sensorSlug, MeasureUnit? unit = null) => new()
    {
        Id = Guid.CreateVersion7(),
        TopicFilter = Topic,
        SensorSlug = sensorSlug,
        Payload = ValuePointer is null ? SourcePayload.Number : SourcePayload.Json,
        Quantity = Quantity,
        ValuePointer = ValuePointer,
        Unit = (unit ?? MeasureUnit.Find(UnitSymbol))!.Symbol,
    };
}

/// <summary>A value in a payload that looks like a temperature or a pH.</summary>
/// <param name="Place">JSON Pointer to it; null for a bare number.</param>
/// <param name="Quantity">What it seems to measure.</param>
/// <param name="Unit">The unit it seems to be in.</param>
/// <param name="Value">The value in that unit.</param>
public sealed record Likeness(string? Place, Quantity Quantity, MeasureUnit Unit, double Value);
