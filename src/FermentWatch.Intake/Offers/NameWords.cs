using System.Text.RegularExpressions;
using FermentWatch.Intake.Decoding;

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

    public static bool MeansPh(string name)
    {
        string[] words = Words(name);
        return words.Contains("ph") && !words.Any(_otherwise.Contains);
    }

    /// <summary>Whether it names a temperature, and in which unit if it says so.</summary>
    public static bool MeansTemperature(string name, out MeasureUnit? unit)
    {
        string[] words = Words(name);
        unit = words switch
        {
            _ when words.Contains("tempf") || words.Contains("fahrenheit") || words is [.., "f"] => MeasureUnit.Fahrenheit,
            _ when words.Contains("tempc") || words.Contains("celsius") || words is [.., "c"] => MeasureUnit.Celsius,
            _ => null,
        };
        return words.Any(word => word is "temperature" or "temp" or "tempc" or "tempf" or "temperaturec" or "celsius" or "fahrenheit")
            && !words.Any(_otherwise.Contains);
    }

    /// <summary>The words of a name, in lower case: <c>roomTemp_C2</c> is room, temp, c, 2; pH stays one word.</summary>
    private static string[] Words(string name) =>
        [.. Word().Matches(name.Replace("pH", "ph", StringComparison.Ordinal)).Select(match => match.Value.ToLowerInvariant())];

    [GeneratedRegex("[A-Z]+(?![a-z])|[A-Z]?[a-z]+|[0-9]+", RegexOptions.CultureInvariant)]
    private static partial Regex Word();
}
