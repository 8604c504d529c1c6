namespace FermentWatch.Kitchen.Readings;

/// <summary>
/// Temperatures by which one-wire parts say that they have no value. They must stay what they are whatever unit they came in
/// and whatever offset a source has, or nothing can tell them from readings any more.
/// </summary>
public static class TemperatureSentinels
{
    /// <summary>The part has been powered and not yet converted.</summary>
    public const double PowerUpCelsius = 85.0;

    /// <summary>The part does not answer.</summary>
    public const double UnpluggedCelsius = -127.0;

    /// <summary>Whether this is one of them.</summary>
    public static bool Holds(double celsius) => celsius is PowerUpCelsius or UnpluggedCelsius;
}
