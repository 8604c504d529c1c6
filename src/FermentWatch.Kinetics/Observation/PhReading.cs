namespace FermentWatch.Kinetics.Observation;

/// <summary>A pH measured in the brine.</summary>
/// <param name="Day">Days since packing, zero or more; taken to the nearest quarter of an hour.</param>
/// <param name="Ph">The reading, 2 to 8.</param>
/// <param name="Method">How it was measured.</param>
public sealed record PhReading(double Day, double Ph, PhMethod Method);
