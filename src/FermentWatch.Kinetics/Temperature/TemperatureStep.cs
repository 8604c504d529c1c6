namespace FermentWatch.Kinetics.Temperature;

/// <summary>A quarter of an hour of temperature.</summary>
/// <param name="Celsius">Mean, Celsius, -5 to 45; null where nothing that counts was measured.</param>
/// <param name="SpreadCelsius">Standard deviation of what the jar's surroundings may have had around that mean, Celsius.</param>
/// <param name="InsideJar">Measured inside the jar: no lag is applied.</param>
public readonly record struct TemperatureStep(double? Celsius, double SpreadCelsius, bool InsideJar)
{
    /// <summary>Lowest temperature the model takes; below, brine begins to freeze.</summary>
    public const double LowestCelsius = -5;

    /// <summary>Highest temperature the model takes; above, the lactic acid bacteria die.</summary>
    public const double HighestCelsius = 45;

    /// <summary>Spread of a sensor in the room of the jar: its own error and the difference from shelf to shelf.</summary>
    public const double RoomSensorSpreadCelsius = 0.5;

    /// <summary>Spread of a sensor in the jar: its own error.</summary>
    public const double JarSensorSpreadCelsius = 0.2;

    /// <summary>A mean measured in the room.</summary>
    public static TemperatureStep Room(double? celsius) => new(celsius, RoomSensorSpreadCelsius, InsideJar: false);

    /// <summary>A mean measured in the jar.</summary>
    public static TemperatureStep Jar(double? celsius) => new(celsius, JarSensorSpreadCelsius, InsideJar: true);

    /// <summary>Whether a temperature is one the model takes.</summary>
    public static bool IsInRange(double celsius) => celsius is >= LowestCelsius and <= HighestCelsius;
}
