using System.Text.RegularExpressions;
using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Intake.Offers;

/// <summary>What the names of fields and topics mean, as far as names can be trusted.</summary>
internal static partial class NameWords
{
    // The temperature of a chip, a set point or an alarm is not that of a room.
    private static readonly HashSet<string> _otherwise =
    [
        "target", "set", "setpoint", "offset", "calibration", "min", "max", "minimum", "maximum", "limit", "alarm", "threshold", "cpu",
        "soc", "chip", "device", "board", "battery", "unit", "units", "scale", "precision", "resolution", "interval", "color", "colour",
    ];

    /// <summary>The quantity it names, and the unit if it says that too; nulls where it names none.</summary>
    public static (MeasuredQuantity? Quantity, MeasureUnit? Unit) Meaning(string name)
    {
        string[] words = Words(name);
        if (words.Any(_otherwise.Contains))
            return (null, null);
        MeasuredQuantity? quantity = MeasuredQuantity.All.Where(each => each.LooksLike is { } like && words.Any(like.Words.Contains))
            .MinBy(each => each.LooksLike!.Words.Count);
        return (quantity, quantity?.Units.LastOrDefault(unit => words.Any(unit.NameWords.Contains) || words[^1] == unit.NameEnding));
    }

    /// <summary>The words of a name, in lower case: <c>roomTemp_C2</c> is room, temp, c, 2; pH stays one word.</summary>
    private static string[] Words(string name) =>
        [.. Word().Matches(name.Replace("pH", "ph", StringComparison.Ordinal)).Select(match => match.Value.ToLowerInvariant())];

    [GeneratedRegex("[A-Z]+(?![a-z])|[A-Z]?[a-z]+|[0-9]+", RegexOptions.CultureInvariant)]
    private static partial Regex Word();
}
