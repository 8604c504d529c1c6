using System.Text.Json;
using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Intake.Decoding.SenMl;

/// <summary>Reads Sensor Measurement Lists in JSON (RFC 8428) and resolves them.</summary>
public static class SenMlReader
{
    /// <summary>
    /// Reads a pack. A record that cannot be used costs only itself; a base field that cannot be used costs the pack, because
    /// nothing after it would mean what it says.
    /// </summary>
    public static SenMlPack Read(ReadOnlyMemory<byte> payload, Instant now)
    {
        using JsonDocument? document = JsonText.Parse(payload);
        if (document is null || document.RootElement.ValueKind != JsonValueKind.Array)
            return Refused(PayloadExcerpt.Of(payload.Span), "Not a SenML pack; a JSON array of records belongs here (RFC 8428).");

        var records = new List<SenMlRecord>();
        var faults = new List<DecodeFault>();
        var bases = new SenMlBase();
        foreach (JsonElement element in document.RootElement.EnumerateArray())
        {
            if (element.ValueKind != JsonValueKind.Object)
                return Refused(PayloadExcerpt.Of(element.GetRawText()), "A SenML record must be a JSON object.");
            if (bases.Take(element) is { } wrong)
                return Refused(PayloadExcerpt.Of(element.GetRawText()), wrong);
            if (HoldsBaseFieldsOnly(element))
                continue;
            Resolve(element, bases, now, records, faults);
        }
        return new SenMlPack(records, faults);
    }

    private static SenMlPack Refused(string example, string explanation) =>
        new([], [new DecodeFault(RejectReason.NotParseable, example, explanation)]);

    private static bool HoldsBaseFieldsOnly(JsonElement record)
    {
        foreach (JsonProperty field in record.EnumerateObject())
            if (field.Name is not ("bn" or "bt" or "bu" or "bv" or "bs" or "bver"))
                return false;
        return true;
    }

    private static void Resolve(
        JsonElement record, SenMlBase bases, Instant now, List<SenMlRecord> records, List<DecodeFault> faults)
    {
        string text = PayloadExcerpt.Of(record.GetRawText());
        if (WrongType(record) is { } wrong)
        {
            faults.Add(new DecodeFault(RejectReason.NotParseable, text, wrong));
            return;
        }

        double? own = record.TryGetProperty("t", out JsonElement t) ? SenMlBase.Number(t) : null;
        double seconds = (bases.TimeSeconds ?? 0) + (own ?? 0);
        bool timed = bases.TimeSeconds is not null || own is not null;
        if (SenMlTime.Resolve(seconds, now) is not { } measuredAt)
        {
            faults.Add(new DecodeFault(
                RejectReason.NotParseable, text, "The time lies before 1970 or after 9999; seconds belong here, not milliseconds."));
            return;
        }

        double? number = record.TryGetProperty("v", out JsonElement v) ? SenMlBase.Number(v) + bases.Value : null;
        records.Add(new SenMlRecord(
            bases.Name + (record.TryGetProperty("n", out JsonElement n) ? SenMlBase.Text(n) : ""),
            record.TryGetProperty("u", out JsonElement u) ? SenMlBase.Text(u) : bases.Unit,
            number is { } finite && double.IsFinite(finite) ? finite : null,
            OtherValue(record),
            measuredAt,
            !timed ? TimeSource.Arrival : SenMlTime.IsRelative(seconds) ? TimeSource.PayloadRelative : TimeSource.Payload,
            text));
    }

    private static string? WrongType(JsonElement record)
    {
        foreach (JsonProperty field in record.EnumerateObject())
        {
            JsonValueKind kind = field.Value.ValueKind;
            switch (field.Name)
            {
                case "n" or "u" when SenMlBase.Text(field.Value) is null:
                    return $"The field {field.Name} must be a string.";
                case "t" when SenMlBase.Number(field.Value) is null:
                    return "The time (t) must be a number of seconds.";
                case "v" when kind is not (JsonValueKind.Number or JsonValueKind.Null):
                    return "The value (v) must be a number without quotes.";
            }
        }
        return null;
    }

    private static string? OtherValue(JsonElement record)
    {
        foreach (string label in (ReadOnlySpan<string>)["vs", "vb", "vd"])
            if (record.TryGetProperty(label, out JsonElement value))
                return value.GetRawText();
        return null;
    }
}
