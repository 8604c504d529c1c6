namespace FermentWatch.Kinetics.Forecasting;

/// <summary>
/// The day, counted from packing, at which a level is reached (of a pH, for the last time): quantiles over the members' own passages, never
/// the passage of the median path. Null where that share of the members does not get there within the span.
/// </summary>
/// <param name="P10">The early end: one member in ten is there by then.</param>
/// <param name="P50">Half of the members are there by then.</param>
/// <param name="P90">The late end: nine members in ten are there by then.</param>
public readonly record struct PassageDays(double? P10, double? P50, double? P90);
