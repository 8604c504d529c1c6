using System.Text;
using System.Text.Json;
using FermentWatch.Intake.Decoding;
using FermentWatch.Intake.Decoding.SenMl;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Intake.Sources;

/// <summary>Reads payloads by source rules.</summary>
public static class SourceDecoder
{
    /// <summary>Decodes a payload by one rule.</summary>
    public static Decoded Decode(SourceReader source, ReadOnlyMemory<byte> payload, Instant receivedAt)
    {
        Decoded decoded = source.Rule.Payload switch
        {
            SourcePayload.Number => BareNumberDecoder.Decode(payload.Span, source.Unit!, receivedAt),
            SourcePayload.SenMl => SenMlDecoder.Decode(payload, receivedAt, source.Rule.RecordName),
            _ => DecodeJson(source, payload, receivedAt),
        };
        return source.Rule.Offset == 0
            ? decoded
            : decoded with { Values = [.. decoded.Values.Select(value => Shifted(value, source.Rule.Offset))] };
    }

    private static DecodedValue Shifted(DecodedValue value, double offset) =>
        MeasuredQuantity.Of(value.Quantity).IsSentinel(value.Value)
            ? value
            : value with { Value = value.Value + offset };

    private static Decoded DecodeJson(SourceReader source, ReadOnlyMemory<byte> payload, Instant receivedAt)
    {
        using JsonDocument? document = JsonText.Parse(payload);
        return document is null
            ? Decoded.Refused(RejectReason.NotParseable, payload.Span, "Not a JSON document.")
            : DecodeDocument(source, document.RootElement, receivedAt);
    }

    private static Decoded DecodeDocument(SourceReader source, JsonElement root, Instant receivedAt)
    {
        string place = source.Rule.ValuePointer!;
        if (source.Value!.Value.Evaluate(root) is not { } field)
            return Refused(RejectReason.NoValue, root, $"The document has nothing at {place}.");
        switch (Read(field, out double number))
        {
            case NumberShape.NoValue:
                return Refused(RejectReason.NoValue, root, $"The document has no value at {place}.");
            case NumberShape.NotANumber:
                return Refused(RejectReason.NotParseable, root, $"What the document has at {place} is no number.");
        }

        if (UnitOf(source, root, out string? written) is not { } unit)
            return Refused(RejectReason.UnknownUnit, root,
                $"The unit '{PayloadExcerpt.Of(written ?? "")}' at {source.Rule.UnitPointer} is not known.");
        if (unit.Quantity != source.Rule.Quantity)
            return Refused(RejectReason.UnknownUnit, root, $"{unit} is not a unit of {MeasuredQuantity.Of(source.Rule.Quantity!.Value).Name}.");
        if (SourceTimes.Read(source, root, receivedAt) is not { } time)
            return Refused(RejectReason.NotParseable, root,
                $"What the document has at {source.Rule.TimePointer} is no time; {SourceTimes.InWords(source.Rule.Time)} belongs there.");
        double value = unit.ToStored(number);
        return double.IsFinite(value)
            ? Decoded.Of(new DecodedValue(unit.Quantity, value, time.At, time.Source))
            : Refused(RejectReason.NoValue, root, $"Too large to be a number in {unit}.");
    }

    private static Decoded Refused(RejectReason reason, JsonElement root, string explanation) =>
        new([], [new DecodeFault(reason, PayloadExcerpt.Of(root.GetRawText()), explanation)]);

    private static NumberShape Read(JsonElement field, out double number)
    {
        number = 0;
        switch (field.ValueKind)
        {
            case JsonValueKind.Null:
                return NumberShape.NoValue;
            case JsonValueKind.Number:
                return field.TryGetDouble(out number) && double.IsFinite(number) ? NumberShape.Finite : NumberShape.NoValue;
            case JsonValueKind.String:
                // Some gateways put every value in quotes.
                return JsonText.Of(field) is { } text ? StrictNumber.Read(Encoding.UTF8.GetBytes(text), out number) : NumberShape.NotANumber;
            default:
                return NumberShape.NotANumber;
        }
    }

    private static MeasureUnit? UnitOf(SourceReader source, JsonElement root, out string? written)
    {
        written = null;
        JsonElement? field = source.UnitPlace?.Evaluate(root);
        if (field is not { } sibling || sibling.ValueKind == JsonValueKind.Null)
            return source.Unit;
        written = JsonText.Of(sibling);
        return written is null ? null : MeasureUnit.Meant(written);
    }
}
