namespace FermentWatch.Kinetics.Forecasting;

/// <summary>Median and 80 % interval of a quantity, over the members of the ensemble.</summary>
/// <param name="P10">One member in ten lies below.</param>
/// <param name="P50">Half of the members lie below.</param>
/// <param name="P90">Nine members in ten lie below.</param>
public readonly record struct Quantiles(double P10, double P50, double P90);
