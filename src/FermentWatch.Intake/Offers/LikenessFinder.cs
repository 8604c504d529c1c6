using System.Text.Json;
using FermentWatch.Intake.Decoding;
using FermentWatch.Intake.Sources;
using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Intake.Offers;

/// <summary>
/// Finds what looks like a temperature or a pH in a payload nobody has told us of. A name must say so, in the topic for a bare
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
            return Look(null, string.Join(' ', topic.Split('/').TakeLast(2)), number, null) is { } bare ? [bare] : [];
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
        .Select(value => new Likeness(reader.Rule.ValuePointer, value.Quantity, MeasureUnit.StoredFor(value.Quantity), value.Value));

    private static void Search(JsonElement element, string pointer, string? name, List<Likeness> found, ref int left)
    {
        if (element.ValueKind == JsonValueKind.Object)
        {
            MeasureUnit? unit = WrittenUnit(element);
            foreach (JsonProperty field in element.EnumerateObject())
            {
                if (left-- <= 0 || found.Count >= MostFound)
                    return;
                if (field.Name is not { } label)
                    continue;
                string place = $"{pointer}/{label.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal)}";
                // A field called value is named by what it is the value of.
                string called = name is not null && label is "value" or "Value" or "val" ? name! : label;
                if (Number(field.Value) is { } number && Look(place, called, number, unit) is { } likeness)
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

    private static MeasureUnit? WrittenUnit(JsonElement document)
    {
        foreach (JsonProperty field in document.EnumerateObject())
            if (field.Name.Contains("unit", StringComparison.OrdinalIgnoreCase)
                && JsonText.Of(field.Value) is { } word && UnitWords.Find(word) is { Quantity: Quantity.Temperature } unit)
                return unit;
        return null;
    }

    private static Likeness? Look(string? pointer, string name, double value, MeasureUnit? written)
    {
        if (NameWords.MeansPh(name))
            return value is >= 2 and <= 9 ? new Likeness(pointer, Quantity.Ph, MeasureUnit.Ph, value) : null;
        if (!NameWords.MeansTemperature(name, out MeasureUnit? named))
            return null;
        MeasureUnit? unit = named ?? written ?? Guess(value);
        return unit?.ToStored(value) is >= -30 and <= 60 ? new Likeness(pointer, Quantity.Temperature, unit, value) : null;
    }

    // Where kitchens and cellars are, the ranges hardly overlap: 45 F is a refrigerator, 45 C is no room.
    private static MeasureUnit? Guess(double value) => value switch
    {
        >= -30 and <= 45 => MeasureUnit.Celsius,
        > 45 and <= 120 => MeasureUnit.Fahrenheit,
        >= 250 and <= 320 => MeasureUnit.Kelvin,
        _ => null,
    };
}
