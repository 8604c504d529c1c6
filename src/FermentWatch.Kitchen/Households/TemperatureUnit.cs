namespace FermentWatch.Kitchen.Households;

/// <summary>The unit in which this household reads temperatures.</summary>
public enum TemperatureUnit
{
    Celsius = 1,
    Fahrenheit = 2,
}
