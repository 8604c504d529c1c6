using FermentWatch.Kinetics.Salt;
using FermentWatch.Kitchen.Households;

namespace FermentWatch.Kitchen.Judging;

/// <summary>
/// Tells when a thermometer's figures have moved as if it sent another unit: new batteries and a firmware's update do that. It is
/// warned of and not corrected, because a guess would be taken silently. Differences by which it is told are this project's own.
/// </summary>
public static class UnitShift
{
    /// <summary>Near 40 below zero both scales agree; in a kitchen they are this far apart or nothing is told.</summary>
    private const double LeastMove = 8;

    private const double RoomMayMove = 4;

    /// <summary>What the figures now seem to be in while they are taken for Celsius; null where nothing speaks for a shift.</summary>
    /// <param name="before">What the place had before, in Celsius.</param>
    /// <param name="now">What the sensor's figures are now, taken for Celsius.</param>
    public static TemperatureUnit? Of(double before, double now)
    {
        if (Math.Abs(now - before) < LeastMove)
            return null;
        if (Math.Abs(CustomaryUnits.CelsiusFromFahrenheit(now) - before) <= RoomMayMove)
            return TemperatureUnit.Fahrenheit;
        // Figures that were Fahrenheit and taken for Celsius so far come down to what they should have been.
        return Math.Abs(CustomaryUnits.FahrenheitFromCelsius(now) - before) <= RoomMayMove * 1.8 ? TemperatureUnit.Celsius : null;
    }
}
