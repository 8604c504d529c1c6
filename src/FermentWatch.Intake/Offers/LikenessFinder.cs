using System.Text.Json;
using FermentWatch.Intake.Decoding;
using FermentWatch.Intake.Sources;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;

namespace FermentWatch.Intake.Offers;

/// <summary>
/// Finds what looks like a quantity of a kitchen in a payload nobody has told us of. A name must say so, in the topic for a bare
/// number and in the document else, and the value must be one a kitchen can have. What it finds is offered, never taken.
/// </summary>
public static class LikenessFinder
{
    private const int MostFields = 300;
    private const int MostFound = 8;

    /// <summary>Everything that looks like one, at most a few.</summary>
    public static IReadOnlyList<Likeness> Find(string topic, ReadOnlyMemory<byte> payload)
    {
        if (StrictNumber.Read(payload.Span, out double number) == NumberShape.Finite)
            return Look(null, string.Join(' ', topic.Split('/').TakeLast(2)), number, []) is { } bare ? [bare] : [];
        using JsonDocument? document = JsonText.Parse(payload);
        var found = new List<Likeness>();
        int left = MostFields;
        if (document is not null)
            Search(document.RootElement, "", null, found, ref left);
        return found;
    }

    /// <summary>What a rule reads in it, for a device that is no sensor yet.</summary>
    internal static IEnumerable<Likeness> ByRule(SourceReader reader, Decoded decoded) => decoded.Values
        .DistinctBy(value => value.Quantity)
        .Select(value => new Likeness(reader.Rule.ValuePointer, value.Quantity, MeasuredQuantity.Of(value.Quantity).StoredUnit, value.Value));

    private static void Search(JsonElement element, string pointer, string? name, List<Likeness> found, ref int left)
    {
        if (element.ValueKind == JsonValueKind.Object)
        {
            List<MeasureUnit> written = WrittenUnits(element);
            foreach (JsonProperty field in element.EnumerateObject())
            {
                if (left-- <= 0 || found.Count >= MostFound)
                    return;
                if (field.Name is not { } label)
                    continue;
                string place = $"{pointer}/{label.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal)}";
                // A field called value is named by what it is the value of.
                string called = name is not null && label is "value" or "Value" or "val" ? name! : label;
                if (Number(field.Value) is { } number && Look(place, called, number, written) is { } likeness)
                    found.Add(likeness);
                else
                    Search(field.Value, place, called, found, ref left);
            }
        }
        else if (element.ValueKind == JsonValueKind.Array)
        {
            int index = 0;
            foreach (JsonElement item in element.EnumerateArray())
            {
                if (left-- <= 0 || found.Count >= MostFound)
                    return;
                Search(item, $"{pointer}/{index++}", name, found, ref left);
            }
        }
    }

    private static double? Number(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Number when value.TryGetDouble(out double number) && double.IsFinite(number) => number,
        JsonValueKind.String when JsonText.Of(value) is { } text
            && StrictNumber.Read(System.Text.Encoding.UTF8.GetBytes(text), out double number) == NumberShape.Finite => number,
        _ => null,
    };

    private static List<MeasureUnit> WrittenUnits(JsonElement document)
    {
        var units = new List<MeasureUnit>();
        foreach (JsonProperty field in document.EnumerateObject())
            if (field.Name.Contains("unit", StringComparison.OrdinalIgnoreCase)
                && JsonText.Of(field.Value) is { } word && MeasureUnit.Meant(word) is { } unit)
                units.Add(unit);
        return units;
    }

    private static Likeness? Look(string? pointer, string name, double value, List<MeasureUnit> written)
    {
        (MeasuredQuantity? quantity, MeasureUnit? named) = NameWords.Meaning(name);
        if (quantity is null)
            return null;
        MeasureUnit? unit = named ?? written.Find(each => each.Quantity == quantity.Key)
            ?? quantity.Units.FirstOrDefault(each => each.Likely?.Hold(value) ?? true);
        return unit is not null && quantity.LooksLike!.Within.Hold(unit.ToStored(value)) ? new Likeness(pointer, quantity.Key, unit, value) : null;
    }
}
