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
