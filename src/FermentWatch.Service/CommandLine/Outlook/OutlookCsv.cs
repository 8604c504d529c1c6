using FermentWatch.Kinetics.Forecasting;

namespace FermentWatch.Service.CommandLine.Outlook;

/// <summary>The answer as comma separated lines: the course, or, where days of levels were asked for, those days instead.</summary>
internal static class OutlookCsv
{
    /// <summary>Columns of the course. Others script against them.</summary>
    public const string CourseColumns = "day,temperature_c,ph_p10,ph_p50,ph_p90,acidity_p10,acidity_p50,acidity_p90,sourness_p50";

    /// <summary>Columns of the days.</summary>
    public const string UntilColumns = "until,p10,p50,p90";

    public static IEnumerable<string> Lines(OutlookAnswer answer) =>
        answer.Until.Count > 0
            ? answer.Until.Select(until => $"{until.Name},{Days(until.Days)}").Prepend(UntilColumns)
            : answer.Forecast.Course.Select(Course).Prepend(CourseColumns);

    private static string Days(PassageDays days) => string.Join(',', Digits.Day(days.P10), Digits.Day(days.P50), Digits.Day(days.P90));

    private static string Course(CoursePoint point) => string.Join(',',
        Digits.Day(point.Day), Digits.Hundredths(point.JarCelsius),
        Digits.Ph(point.Ph.P10), Digits.Ph(point.Ph.P50), Digits.Ph(point.Ph.P90),
        Digits.Acidity(point.AcidityPercentLactic.P10), Digits.Acidity(point.AcidityPercentLactic.P50),
            Digits.Acidity(point.AcidityPercentLactic.P90),
        Digits.Hundredths(point.SournessP50));
}
