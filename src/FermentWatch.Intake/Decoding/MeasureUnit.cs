using FermentWatch.Kinetics.Salt;
using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Intake.Decoding;

/// <summary>
/// A unit in which a value may come in, and the way to the unit in which its quantity is stored.
/// Symbols are those of the SenML units registry (RFC 8428 section 12.1, RFC 8798 for mV); <c>degF</c> is ours.
/// </summary>
public sealed class MeasureUnit
{
    private readonly Func<double, double> _toStored;

    private MeasureUnit(string symbol, Quantity quantity, Func<double, double> toStored)
    {
        Symbol = symbol;
        Quantity = quantity;
        _toStored = toStored;
    }

    public static MeasureUnit Celsius { get; } = new("Cel", Quantity.Temperature, value => value);

    public static MeasureUnit Fahrenheit { get; } = new("degF", Quantity.Temperature, CustomaryUnits.CelsiusFromFahrenheit);

    public static MeasureUnit Kelvin { get; } = new("K", Quantity.Temperature, value => value - 273.15);

    public static MeasureUnit Ph { get; } = new("pH", Quantity.Ph, value => value);

    public static MeasureUnit Millivolts { get; } = new("mV", Quantity.Millivolts, value => value);

    public static MeasureUnit Volts { get; } = new("V", Quantity.Millivolts, value => value * 1000);

    public static MeasureUnit RelativeHumidity { get; } = new("%RH", Quantity.Humidity, value => value);

    /// <summary>Every unit that is understood.</summary>
    public static IReadOnlyList<MeasureUnit> All { get; } =
        [Celsius, Fahrenheit, Kelvin, Ph, Millivolts, Volts, RelativeHumidity];

    /// <summary>How the unit is written, case-sensitive.</summary>
    public string Symbol { get; }

    /// <summary>What it measures.</summary>
    public Quantity Quantity { get; }

    /// <summary>The unit with this symbol, or null.</summary>
    public static MeasureUnit? Find(string? symbol)
    {
        foreach (MeasureUnit unit in All)
            if (unit.Symbol == symbol)
                return unit;
        return null;
    }

    /// <summary>The unit in which a quantity is stored.</summary>
    public static MeasureUnit StoredFor(Quantity quantity) => quantity switch
    {
        Quantity.Temperature => Celsius,
        Quantity.Ph => Ph,
        Quantity.Millivolts => Millivolts,
        Quantity.Humidity => RelativeHumidity,
        _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "Not a quantity we keep."),
    };

    /// <summary>The value in the unit in which the quantity is stored.</summary>
    public double ToStored(double value) => _toStored(value);

    public override string ToString() => Symbol;
}
