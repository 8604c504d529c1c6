namespace FermentWatch.Kinetics.Temperature;

/// <summary>A temperature measured at some time.</summary>
/// <param name="Day">Days since packing.</param>
/// <param name="Celsius">Temperature, Celsius.</param>
public readonly record struct TimedTemperature(double Day, double Celsius);
