namespace FermentWatch.Kitchen.Readings;

/// <summary>What a sensor measures. The unit of a stored value follows from it; other units are converted at the door.</summary>
public enum Quantity
{
    /// <summary>Degrees Celsius.</summary>
    Temperature = 1,

    /// <summary>pH, no unit.</summary>
    Ph = 2,

    /// <summary>Electrode potential in millivolts.</summary>
    Millivolts = 3,

    /// <summary>Relative humidity in per cent.</summary>
    Humidity = 4,
}
