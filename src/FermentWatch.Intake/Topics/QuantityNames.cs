using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Intake.Topics;

/// <summary>The names of quantities in topics and in the names of SenML records.</summary>
public static class QuantityNames
{
    /// <summary>The names, for texts that say what would be right.</summary>
    public const string AllInWords = "temperature, ph, millivolts or humidity";

    /// <summary>The quantity with this name, or null.</summary>
    public static Quantity? Find(ReadOnlySpan<char> name) => name switch
    {
        "temperature" => Quantity.Temperature,
        "ph" => Quantity.Ph,
        "millivolts" => Quantity.Millivolts,
        "humidity" => Quantity.Humidity,
        _ => null,
    };

    /// <summary>The name of a quantity.</summary>
    public static string Of(Quantity quantity) => quantity switch
    {
        Quantity.Temperature => "temperature",
        Quantity.Ph => "ph",
        Quantity.Millivolts => "millivolts",
        Quantity.Humidity => "humidity",
        _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "Not a quantity we keep."),
    };
}
