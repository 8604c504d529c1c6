using System.Globalization;
using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Storage.Archives;

/// <summary>A file of readings: one sensor and one quantity, by time of measurement.</summary>
/// <param name="SensorKey">The key under which the log files the sensor.</param>
/// <param name="Quantity">The number of the quantity.</param>
internal sealed record ReadingFile(int SensorKey, int Quantity)
{
    internal const string Folder = "readings/";

    private const string Ending = ".csv";

    /// <summary>Its path in the zip: <c>readings/sensor-3-temperature.csv</c>.</summary>
    internal string Name => string.Create(CultureInfo.InvariantCulture, $"{Folder}sensor-{SensorKey}-{Known?.Name ?? $"quantity{Quantity}"}{Ending}");

    /// <summary>The columns; the unit of the second is that in which the quantity is stored.</summary>
    internal string[] Header => ["measured_at", ValueTitle, "received_at", "time_source", "verdict"];

    private string ValueTitle => Known is null ? "value" : $"{Known.Name}_{UnitWord(Known.StoredUnit.Symbol)}".TrimEnd('_');

    private MeasuredQuantity? Known => MeasuredQuantity.All.FirstOrDefault(each => (int)each.Key == Quantity);

    /// <summary>The file that a path means; null for any other path.</summary>
    internal static ReadingFile? Find(string path)
    {
        string[] parts = path.Split('-', 3);
        if (parts.Length != 3 || parts[0] != Folder + "sensor" || !parts[2].EndsWith(Ending, StringComparison.Ordinal)
            || !int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out int key))
            return null;
        string name = parts[2][..^Ending.Length];
        int? number = (int?)MeasuredQuantity.Find(name);
        if (number is null && name.StartsWith("quantity", StringComparison.Ordinal)
            && int.TryParse(name["quantity".Length..], NumberStyles.None, CultureInfo.InvariantCulture, out int other))
            number = other;
        return number is { } quantity && new ReadingFile(key, quantity) is var file && file.Name == path ? file : null;
    }

    /// <summary>A verdict or a source of time as a word; a number that this version does not know stays a number.</summary>
    internal static string WordOf<T>(long stored)
        where T : struct, Enum => Enum.ToObject(typeof(T), stored) is T value && Enum.IsDefined(value)
            ? value.ToString() : stored.ToString(CultureInfo.InvariantCulture);

    private static string UnitWord(string symbol) => symbol switch
    {
        "Cel" => "celsius",
        "%RH" => "percent",
        _ => "",
    };
}
