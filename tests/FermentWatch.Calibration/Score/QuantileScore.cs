using FermentWatch.Kinetics.Forecasting;

namespace FermentWatch.Calibration.Score;

/// <summary>
/// Quantile score of p10, p50 and p90 (Gneiting and Raftery 2007, J. Am. Stat. Assoc. 102:359-378), their mean, doubled so that the
/// median's part is the absolute error; in units of 0.1 pH or 0.1 % acid.
/// </summary>
internal static class QuantileScore
{
    public static double Of(Quantiles quantiles, double value) =>
        2 * (Loss(0.1, quantiles.P10, value) + Loss(0.5, quantiles.P50, value) + Loss(0.9, quantiles.P90, value)) / 3 / 0.1;

    private static double Loss(double share, double quantile, double value) => (value >= quantile ? share : share - 1) * (value - quantile);
}
