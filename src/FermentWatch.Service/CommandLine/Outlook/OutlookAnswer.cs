using System.Globalization;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.Forecasts;

namespace FermentWatch.Service.CommandLine.Outlook;

/// <summary>A forecast with the days somebody asked for.</summary>
/// <param name="Forecast">The forecast.</param>
/// <param name="SpanDays">How far it was asked to look.</param>
/// <param name="Until">Days of the levels that were asked for, in that order.</param>
/// <param name="Target">Day of the sourness that is wanted; null if nobody said.</param>
/// <param name="Ready">When to pack; null if nobody said when it should be ready.</param>
internal sealed record OutlookAnswer(
    Forecast Forecast, double SpanDays, IReadOnlyList<(string Name, PassageDays Days)> Until, (string Name, PassageDays Days)? Target, PackBy? Ready)
{
    /// <summary>Computes the answer. A forecast waits for one level at a time, and the same request gives the same bits.</summary>
    /// <param name="call">What was asked for.</param>
    /// <param name="progress">Told the share that is done, 0 to 1, after each level.</param>
    public static OutlookAnswer To(OutlookCall call, Action<double> progress)
    {
        NamedTarget[] levels = [.. call.Until, .. call.Target is null ? [] : new[] { call.Target }];
        var days = new List<(string Name, PassageDays Days)>();
        Forecast? forecast = null;
        foreach (NamedTarget level in levels)
        {
            forecast = Forecaster.Run(call.Request with { Target = level.Level });
            days.Add((level.Name, forecast.Target!.Value));
            progress((double)days.Count / levels.Length);
        }
        forecast ??= Forecaster.Run(call.Request);
        return new OutlookAnswer(forecast, call.Request.Days, [.. days.Take(call.Until.Count)], call.Target is null ? null : days[^1],
            call is { Target: not null, Ready: { } ready } ? PackBy.For(ready, days[^1].Days) : null);
    }
}

/// <summary>Figures with the digits worth printing, in the invariant culture.</summary>
internal static class Digits
{
    public static string Day(double? day) => day?.ToString("0.####", CultureInfo.InvariantCulture) ?? "";

    public static string Whole(double value) => value.ToString("0", CultureInfo.InvariantCulture);

    public static string Tenths(double value) => value.ToString("0.0", CultureInfo.InvariantCulture);

    public static string Hundredths(double value) => value.ToString("0.00", CultureInfo.InvariantCulture);

    public static string Ph(double value) => value.ToString("0.000", CultureInfo.InvariantCulture);

    public static string Acidity(double value) => value.ToString("0.0000", CultureInfo.InvariantCulture);
}

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
