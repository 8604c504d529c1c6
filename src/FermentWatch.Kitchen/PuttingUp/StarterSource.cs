using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Troubles;
using NodaTime;

namespace FermentWatch.Kitchen.PuttingUp;

/// <summary>
/// A jar whose brine may start another: kept, measured below the acid line with no alarm, and without trouble. Mould, slime or an off
/// smell bars it for good, whatever was measured since. This project's own rule.
/// </summary>
/// <param name="Number">Number of the jar.</param>
/// <param name="Name">What the household calls it.</param>
/// <param name="Ph">The reading behind it.</param>
/// <param name="AcidityPercentLactic">Its acidity as expected at present, per cent lactic.</param>
public sealed record StarterSource(int Number, string Name, double? Ph, double AcidityPercentLactic)
{
    /// <summary>The jar as a source; null where its brine may start nothing, or nothing is known of its acidity.</summary>
    public static StarterSource? Of(Jar jar, JarForecast? forecast, DateTimeZone zone, Instant now)
    {
        AcidLineReport line = AcidLine.Report(jar, zone);
        bool isBelow = line is { State: AcidLineState.MeasuredBelow, Alarm: AcidLineAlarm.None };
        bool isKept = jar.Stage is JarStage.Fermenting or JarStage.Cold;
        return isKept && isBelow && forecast is not null && HasNoTrouble(jar, zone)
            ? new StarterSource(jar.Number, jar.Name, line.LastCounted!.Ph, Math.Round(forecast.PointAt(now).AcidityPercentLactic.P50, 2)) : null;
    }

    private static bool HasNoTrouble(Jar jar, DateTimeZone zone) =>
        Trouble.Of(jar, zone) is { ForecastWithdrawn: false, CloserWatch: false }
        && !jar.Standing.OfType<Sighting>().Any(seen => seen.Kind is SightingKind.FuzzOrUnsure or SightingKind.Slime or SightingKind.OffSmell);
}
