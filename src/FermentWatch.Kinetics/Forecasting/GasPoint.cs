namespace FermentWatch.Kinetics.Forecasting;

/// <summary>How fast gas is made at one time.</summary>
/// <param name="Day">Days since packing.</param>
/// <param name="MolesPerLitreAndDay">Carbon dioxide of the heterofermentative starters, mol per litre of brine and day; what stays dissolved is in it.</param>
public sealed record GasPoint(double Day, Quantiles MolesPerLitreAndDay);
