using System.Globalization;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;

namespace FermentWatch.Acts.Sensors;

/// <summary>Source rules in words.</summary>
public static class RuleWords
{
    /// <summary>What of a payload is read.</summary>
    public static string Payload(SourceRule rule) => rule.Payload switch
    {
        SourcePayload.Number => $"a bare number, {Unit(rule)}",
        SourcePayload.Json => $"JSON at {rule.ValuePointer}, {Unit(rule)}",
        _ => rule.RecordName is null ? "a SenML pack" : $"a SenML pack, records {rule.RecordName}",
    };

    /// <summary>The range in which its values are believed; empty where that is the quantity's own.</summary>
    public static string Range(SourceRule rule)
    {
        string unit = rule.Quantity is { } quantity && MeasuredQuantity.Of(quantity).StoredUnit.Label is { Length: > 0 } label ? $" {label}" : "";
        string Show(double? bound) => bound is { } value ? value.ToString("0.##", CultureInfo.InvariantCulture) + unit : "";
        return rule switch
        {
            { PlausibleLow: null, PlausibleHigh: null } => "",
            { PlausibleHigh: null } => $"from {Show(rule.PlausibleLow)}",
            { PlausibleLow: null } => $"to {Show(rule.PlausibleHigh)}",
            _ => $"{Show(rule.PlausibleLow)} to {Show(rule.PlausibleHigh)}",
        };
    }

    private static string Unit(SourceRule rule) => rule.UnitPointer is null
        ? $"{MeasuredQuantity.Of(rule.Quantity!.Value).Name} in {rule.Unit}"
        : $"{MeasuredQuantity.Of(rule.Quantity!.Value).Name}, unit at {rule.UnitPointer}";
}
