using System.Text.Json;
using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Intake.Decoding.SenMl;

/// <summary>The base fields in force at a place in a pack (RFC 8428 section 4.1). They hold for the record that names them and all after
/// it.</summary>
internal sealed class SenMlBase
{
    /// <summary>The newest version of SenML that RFC 8428 defines.</summary>
    private const double NewestVersion = 10;

    public string Name { get; private set; } = "";

    public string? Unit { get; private set; }

    public double? TimeSeconds { get; private set; }

    public double Value { get; private set; }

    /// <summary>Takes over the base fields of a record; what is wrong with them, or null.</summary>
    public string? Take(JsonElement record)
    {
        foreach (JsonProperty field in record.EnumerateObject())
        {
            string? wrong = Take(field);
            if (wrong is not null)
                return wrong;
        }
        return null;
    }

    private string? Take(JsonProperty field)
    {
        switch (field.Name)
        {
            case "bn":
                Name = Text(field.Value) ?? Name;
                return field.Value.ValueKind == JsonValueKind.String ? null : "The base name (bn) must be a string.";
            case "bu":
                Unit = Text(field.Value) ?? Unit;
                return field.Value.ValueKind == JsonValueKind.String ? null : "The base unit (bu) must be a string.";
            case "bt":
                TimeSeconds = Number(field.Value);
                return TimeSeconds is null ? "The base time (bt) must be a number of seconds." : null;
            case "bv":
                Value = Number(field.Value) ?? 0;
                return Number(field.Value) is null ? "The base value (bv) must be a number." : null;
            case "bver":
                return Number(field.Value) is <= NewestVersion
                    ? null
                    : $"The base version (bver) must be a number up to {NewestVersion}.";
            default:
                return MustBeUnderstood(field.Name) ? $"The field {field.Name} must be understood, and is not known." : null;
        }
    }

    // RFC 8428 section 4.4: a label that ends in an underscore must be understood, or the pack not be used.
    private static bool MustBeUnderstood(string label) => label.EndsWith('_');

    internal static string? Text(JsonElement value) => JsonText.Of(value);

    internal static double? Number(JsonElement value) =>
        value.ValueKind == JsonValueKind.Number && value.TryGetDouble(out double number) && double.IsFinite(number) ? number : null;
}

/// <summary>A resolved pack, and what of it could not be read.</summary>
public sealed record SenMlPack(IReadOnlyList<SenMlRecord> Records, IReadOnlyList<DecodeFault> Faults);

/// <summary>One record of a pack in resolved form (RFC 8428 section 4.6): base fields worked in, time absolute.</summary>
/// <param name="Name">Base name and name; empty where the pack gives neither.</param>
/// <param name="Unit">Its unit, or the base unit; null where neither is given.</param>
/// <param name="Number">Its value and the base value added up; null where the record has no number.</param>
/// <param name="Other">The JSON text of its string, boolean or data value; null where it has none.</param>
/// <param name="MeasuredAt">Its time, to the millisecond.</param>
/// <param name="TimeSource">Arrival where neither the record nor the base gives a time.</param>
/// <param name="Text">The record as it came, for examples.</param>
public sealed record SenMlRecord(
    string Name, string? Unit, double? Number, string? Other, Instant MeasuredAt, TimeSource TimeSource, string Text);

/// <summary>The time rule of RFC 8428 section 4.5.3: seconds below 2^28 are relative to now, others count from the Unix epoch.</summary>
public static class SenMlTime
{
    /// <summary>2^28 seconds, where absolute times begin.</summary>
    public const double FirstAbsoluteSeconds = 268_435_456;

    // The last millisecond of the year 9999, beyond which calendars end.
    private const double LastMilliseconds = 253_402_300_799_999;

    /// <summary>Whether these seconds are relative to now.</summary>
    public static bool IsRelative(double seconds) => seconds < FirstAbsoluteSeconds;

    /// <summary>The instant, to the nearest millisecond; null if it lies before 1970 or after 9999.</summary>
    public static Instant? Resolve(double seconds, Instant now)
    {
        double milliseconds = Math.Round(seconds * 1000);
        if (IsRelative(seconds))
            milliseconds += now.ToUnixTimeMilliseconds();
        return milliseconds is >= 0 and <= LastMilliseconds ? Instant.FromUnixTimeMilliseconds((long)milliseconds) : null;
    }
}
