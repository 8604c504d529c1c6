using System.Text.Json;

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
