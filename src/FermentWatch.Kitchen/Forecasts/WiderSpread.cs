using FermentWatch.Kinetics.Forecasting;

namespace FermentWatch.Kitchen.Forecasts;

/// <summary>
/// The forecast of a jar that had small trouble, was seen to and was not measured since. The model has no term for what film eats
/// or a top-up thins, so each end of every 80 % interval is set further from its median, on both sides. The factor is this
/// project's own choice: no data stand behind it, and a measured pH takes its place.
/// </summary>
public static class WiderSpread
{
    /// <summary>How much further each end lies from the median.</summary>
    public const double Factor = 1.5;

    private const double LowestPh = 2, HighestPh = 9;

    /// <summary>The same medians with the wider spread.</summary>
    /// <param name="forecast">What the model expects.</param>
    /// <param name="days">How far it reaches, days after packing: an end beyond is not known.</param>
    public static Forecast Of(Forecast forecast, double days) => forecast with
    {
        Course = [.. forecast.Course.Select(point => point with
        {
            Ph = Wider(point.Ph, LowestPh, HighestPh), CentrePh = Wider(point.CentrePh, LowestPh, HighestPh),
            AcidityPercentLactic = Wider(point.AcidityPercentLactic, 0, double.MaxValue),
        })],
        AcidLine = Wider(forecast.AcidLine, days), Ph4 = Wider(forecast.Ph4, days), CentreAcidLine = Wider(forecast.CentreAcidLine, days),
        CentrePh4 = Wider(forecast.CentrePh4, days), Target = forecast.Target is { } target ? Wider(target, days) : null,
    };

    private static Quantiles Wider(Quantiles of, double least, double most) =>
        new(Math.Min(of.P50, Math.Max(least, Away(of.P50, of.P10))), of.P50, Math.Max(of.P50, Math.Min(most, Away(of.P50, of.P90))));

    private static PassageDays Wider(PassageDays of, double days)
    {
        if (of.P50 is not { } middle)
            return of;
        double? late = of.P90 is { } p90 ? Away(middle, p90) : null;
        return new PassageDays(of.P10 is { } p10 ? Math.Max(0, Away(middle, p10)) : null, middle, late <= days ? late : null);
    }

    private static double Away(double middle, double end) => middle + (Factor * (end - middle));
}
