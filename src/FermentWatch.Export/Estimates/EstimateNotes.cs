using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Forwarding;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Troubles;
using NodaTime;

namespace FermentWatch.Export.Estimates;

/// <summary>
/// Notes each saved forecast as an estimate before the next one takes its place: of forecasts only the latest is kept, and the
/// receiver may be away. Runs before and after forecasts are renewed.
/// </summary>
public sealed class EstimateNotes(IForecastBook forecasts, IJarBook jars, IHouseholdBook households, IEstimateLog log)
{
    /// <summary>
    /// Notes the forecasts of kept jars that are not noted yet, as said now. One that is withdrawn after trouble is not said.
    /// Returns how many.
    /// </summary>
    public async Task<int> RunAsync(Instant now, CancellationToken cancellationToken)
    {
        IReadOnlyDictionary<Guid, string> noted = await log.LastInputsAsync(cancellationToken);
        List<JarForecast> fresh = [.. (await forecasts.LatestAsync(cancellationToken))
            .Where(forecast => noted.GetValueOrDefault(forecast.JarId) != forecast.Inputs)];
        if (fresh.Count == 0)
            return 0;
        DateTimeZone zone = (await households.ReadAsync(cancellationToken)).Zone;
        HashSet<Guid> spokenOf = [.. (await jars.KeptAsync(cancellationToken))
            .Where(jar => !Trouble.Of(jar, zone).ForecastWithdrawn).Select(jar => jar.Id)];
        List<SavedEstimate> estimates = [.. fresh.Where(forecast => spokenOf.Contains(forecast.JarId)).Select(forecast => Of(forecast, now))];
        if (estimates.Count > 0)
            await log.NoteAsync(estimates, cancellationToken);
        return estimates.Count;
    }

    /// <summary>What a forecast says of the time up to which it knows.</summary>
    internal static SavedEstimate Of(JarForecast forecast, Instant now)
    {
        Instant quarter = QuarterHour.Floor(now);
        CoursePoint point = forecast.PointAt(quarter);
        return new SavedEstimate(forecast.JarId, now, forecast.Inputs)
        {
            PhP10 = point.Ph.P10,
            PhP50 = point.Ph.P50,
            PhP90 = point.Ph.P90,
            AcidityPercentLacticP50 = point.AcidityPercentLactic.P50,
            SournessP50 = point.SournessP50,
            DaysToTargetP50 = forecast.Forecast.Target?.P50 - (quarter - forecast.Origin).TotalDays,
        };
    }
}
