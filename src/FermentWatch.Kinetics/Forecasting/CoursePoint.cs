namespace FermentWatch.Kinetics.Forecasting;

/// <summary>The jar at one time.</summary>
/// <param name="Day">Days since packing.</param>
/// <param name="JarCelsius">Expected temperature inside the jar.</param>
/// <param name="Ph">pH of the brine.</param>
/// <param name="AcidityPercentLactic">Titratable acidity to pH 8.2, native acids included, as per cent lactic acid.</param>
/// <param name="SournessP50">Median sourness index: protonated acids and free hydrogen ion, mmol/L.</param>
/// <param name="CentrePh">pH in the middle of the largest piece.</param>
public sealed record CoursePoint(double Day, double JarCelsius, Quantiles Ph, Quantiles AcidityPercentLactic, double SournessP50, Quantiles CentrePh);
