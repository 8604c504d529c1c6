namespace FermentWatch.Kinetics.Salt;

/// <summary>US customary units in SI, NIST Handbook 44, appendix C. For the edges only: inside, everything is SI and Celsius.</summary>
public static class CustomaryUnits
{
    /// <summary>Kilograms in a pound.</summary>
    public const double KilogramsPerPound = 0.45359237;

    /// <summary>Grams in an ounce.</summary>
    public const double GramsPerOunce = 28.349523125;

    /// <summary>Millilitres in a teaspoon.</summary>
    public const double MillilitresPerTeaspoon = 4.92892159375;

    /// <summary>Millilitres in a tablespoon.</summary>
    public const double MillilitresPerTablespoon = 14.78676478125;

    /// <summary>Millilitres in a cup.</summary>
    public const double MillilitresPerCup = 236.5882365;

    /// <summary>Millilitres in a pint.</summary>
    public const double MillilitresPerPint = 473.176473;

    /// <summary>Millilitres in a quart.</summary>
    public const double MillilitresPerQuart = 946.352946;

    /// <summary>Litres in a quart.</summary>
    public const double LitresPerQuart = MillilitresPerQuart / 1000;

    /// <summary>Millilitres in a gallon.</summary>
    public const double MillilitresPerGallon = 3785.411784;

    /// <summary>Celsius from Fahrenheit.</summary>
    public static double CelsiusFromFahrenheit(double fahrenheit) => (fahrenheit - 32) / 1.8;

    /// <summary>Fahrenheit from Celsius.</summary>
    public static double FahrenheitFromCelsius(double celsius) => (celsius * 1.8) + 32;
}
