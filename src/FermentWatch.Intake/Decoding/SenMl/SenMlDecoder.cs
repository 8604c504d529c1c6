using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Intake.Decoding.SenMl;

/// <summary>
/// Turns a pack of one sensor into values. The unit says what was measured. The last part of a record's name may say so too and
/// must then agree. Volts count as an electrode's potential only where the name says millivolts or says nothing: most volts in
/// packs are a battery's.
/// </summary>
public static class SenMlDecoder
{
    /// <summary>Decodes a payload.</summary>
    /// <param name="payload">The payload.</param>
    /// <param name="receivedAt">When it came in; times below 2^28 seconds are relative to it.</param>
    /// <param name="recordName">Where a pack holds several devices: what the names of this one's records begin with.</param>
    public static Decoded Decode(ReadOnlyMemory<byte> payload, Instant receivedAt, string? recordName = null)
    {
        SenMlPack pack = SenMlReader.Read(payload, receivedAt);
        var values = new List<DecodedValue>(pack.Records.Count);
        var faults = new List<DecodeFault>(pack.Faults);
        var names = new Dictionary<Quantity, string>();
        foreach (SenMlRecord record in pack.Records)
        {
            if (recordName is not null && !record.Name.StartsWith(recordName, StringComparison.Ordinal))
                continue;
            DecodeFault? fault = Decode(record, names, out DecodedValue? value);
            if (fault is not null)
                faults.Add(fault);
            if (value is not null)
                values.Add(value);
        }
        if (values.Count == 0 && faults.Count == 0)
            faults.Add(new DecodeFault(RejectReason.NoValue, PayloadExcerpt.Of(payload.Span), "The SenML pack holds no record to read."));
        return new Decoded(values, faults);
    }

    private static DecodeFault? Decode(SenMlRecord record, Dictionary<Quantity, string> names, out DecodedValue? value)
    {
        value = null;
        if (record.Number is not { } number)
            return new DecodeFault(RejectReason.NoValue, record.Text, "The record has no finite number as its value (v).");
        if (MeasureUnit.Find(record.Unit) is not { } unit)
            return new DecodeFault(RejectReason.UnknownUnit, record.Text,
                $"The unit {Quoted(record.Unit)} is not one we keep; {UnitsOffered} belongs here.");
        if (Disagreement(record, unit) is { } disagreement)
            return disagreement;
        // Two names for one quantity are two probes: filed as one sensor they would hide each other.
        if (!names.TryAdd(unit.Quantity, record.Name) && names[unit.Quantity] != record.Name)
            return new DecodeFault(RejectReason.UnknownSensor, record.Text,
                $"A second probe for {MeasuredQuantity.Of(unit.Quantity).Name} in the pack of one sensor; give each probe a sensor of its own.");
        double stored = unit.ToStored(number);
        if (!double.IsFinite(stored))
            return new DecodeFault(RejectReason.NoValue, record.Text, $"Too large to be a number in {unit}.");
        value = new DecodedValue(unit.Quantity, stored, record.MeasuredAt, record.TimeSource);
        return null;
    }

    private static DecodeFault? Disagreement(SenMlRecord record, MeasureUnit unit)
    {
        ReadOnlySpan<char> last = record.Name.AsSpan()[(record.Name.AsSpan().LastIndexOfAny(":/") + 1)..];
        Quantity? named = MeasuredQuantity.Find(last);
        if (named is { } quantity && quantity != unit.Quantity)
            return new DecodeFault(RejectReason.UnknownUnit, record.Text,
                $"{unit} is not a unit of {MeasuredQuantity.Of(quantity).Name}; {MeasuredQuantity.Of(quantity).StoredUnit} is.");
        return named is null && !last.IsEmpty && MeasuredQuantity.Of(unit.Quantity).WhyItMustBeNamed is { } why
            ? new DecodeFault(RejectReason.UnknownQuantity, record.Text, why) : null;
    }

    private static string UnitsOffered => MeasureUnit.OneOf([.. MeasureUnit.All.Where(unit => unit.IsOfferedInPacks).Select(unit => unit.Symbol)]);

    private static string Quoted(string? unit) => unit is null ? "(none)" : $"'{PayloadExcerpt.Of(unit)}'";
}
