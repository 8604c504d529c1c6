using System.Globalization;
using FermentWatch.Kinetics.Salt;
using FermentWatch.Kitchen.Households;

namespace FermentWatch.Kitchen.Words;

/// <summary>
/// Measures as this household reads them.
/// </summary>
public static class MeasureWords
{
    /// <summary>A temperature as a number in the household's unit.</summary>
    public static double InUnit(double celsius, TemperatureUnit unit) =>
        unit == TemperatureUnit.Fahrenheit ? CustomaryUnits.FahrenheitFromCelsius(celsius) : celsius;

    /// <summary><c>°C</c> or <c>°F</c>.</summary>
    public static string Symbol(TemperatureUnit unit) => unit == TemperatureUnit.Fahrenheit ? "°F" : "°C";

    /// <summary>A temperature with its unit: <c>18.4 °C</c>, <c>65 °F</c>.</summary>
    public static string Temperature(double celsius, TemperatureUnit unit) => unit == TemperatureUnit.Fahrenheit
        ? string.Create(CultureInfo.InvariantCulture, $"{InUnit(celsius, unit):0} °F")
        : string.Create(CultureInfo.InvariantCulture, $"{celsius:0.#} °C");

    /// <summary>How far two temperatures are apart, with the unit: <c>2.4 °C</c>, <c>4 °F</c>.</summary>
    public static string TemperatureDifference(double celsius, TemperatureUnit unit) => unit == TemperatureUnit.Fahrenheit
        ? string.Create(CultureInfo.InvariantCulture, $"{celsius * 1.8:0} °F")
        : string.Create(CultureInfo.InvariantCulture, $"{celsius:0.#} °C");

    /// <summary>A mass with its unit: <c>2.3 kg</c>, <c>800 g</c>, <c>5.1 lb</c>, <c>4 oz</c>.</summary>
    public static string Mass(double kilograms, MassUnit unit)
    {
        double pounds = kilograms / CustomaryUnits.KilogramsPerPound;
        return unit switch
        {
            MassUnit.Pound when pounds < 1 => string.Create(CultureInfo.InvariantCulture, $"{pounds * 16:0.#} oz"),
            MassUnit.Pound => string.Create(CultureInfo.InvariantCulture, $"{pounds:0.0#} lb"),
            _ when kilograms < 1 => string.Create(CultureInfo.InvariantCulture, $"{kilograms * 1000:0} g"),
            _ => string.Create(CultureInfo.InvariantCulture, $"{kilograms:0.0#} kg"),
        };
    }

    /// <summary>The size of a vessel: litres where the household weighs in kilograms, quarts where in pounds.</summary>
    public static string Volume(double litres, MassUnit unit) => unit == MassUnit.Pound
        ? string.Create(CultureInfo.InvariantCulture, $"{litres / CustomaryUnits.LitresPerQuart:0.#} qt")
        : string.Create(CultureInfo.InvariantCulture, $"{litres:0.##} l");
}
