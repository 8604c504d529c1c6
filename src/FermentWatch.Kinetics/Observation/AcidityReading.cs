namespace FermentWatch.Kinetics.Observation;

/// <summary>A titration of the brine.</summary>
/// <param name="Day">Days since packing, 0 to 366.</param>
/// <param name="PercentLactic">Titratable acidity to pH 8.2 as per cent lactic acid, 0 to 5.</param>
public sealed record AcidityReading(double Day, double PercentLactic);
