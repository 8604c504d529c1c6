namespace FermentWatch.Kinetics.Forecasting;

/// <summary>
/// An answer widened by what would be said without readings that the model cannot explain: the median stays, the interval
/// reaches as far as either. So such a reading moves the answer and never narrows it, and two that contradict each other widen it.
/// </summary>
internal static class Widened
{
    public static Forecast By(Forecast forecast, MemberRun without) => forecast with
    {
        Course = [.. forecast.Course.Zip(without.Course, By)],
        AcidLine = By(forecast.AcidLine, without.AcidLine),
        Ph4 = By(forecast.Ph4, without.Ph4),
        CentreAcidLine = By(forecast.CentreAcidLine, without.CentreAcidLine),
        CentrePh4 = By(forecast.CentrePh4, without.CentrePh4),
        Target = forecast.Target is { } day && without.Target is { } other ? By(day, other) : forecast.Target,
    };

    private static CoursePoint By(CoursePoint point, CoursePoint other) => point with
    {
        Ph = By(point.Ph, other.Ph),
        AcidityPercentLactic = By(point.AcidityPercentLactic, other.AcidityPercentLactic),
        CentrePh = By(point.CentrePh, other.CentrePh),
    };

    private static Quantiles By(Quantiles one, Quantiles other) => new(Math.Min(one.P10, other.P10), one.P50, Math.Max(one.P90, other.P90));

    /// <summary>Null is later than any day of the span.</summary>
    private static PassageDays By(PassageDays one, PassageDays other) => new(
        one.P10 is { } early && other.P10 is { } earlier ? Math.Min(early, earlier) : one.P10 ?? other.P10,
        one.P50,
        one.P90 is { } late && other.P90 is { } later ? Math.Max(late, later) : null);
}
