using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Kitchen.Forecasts;

/// <summary>Renews the forecasts of every kept jar whose inputs have changed.</summary>
public sealed class ForecastPass(
    IHouseholdBook household, IJarBook jars, IPlaceBook places, ISensorBook sensors, IReadingLog log, IForecastBook forecasts)
{
    /// <summary>Renews what needs renewing as of the last quarter hour that closed before <paramref name="now"/>. Returns how many.</summary>
    public async Task<int> RunAsync(Instant now, CancellationToken cancellationToken)
    {
        Instant asOf = QuarterHour.Floor(now);
        // Revisions are read before the facts: a change in between makes one renewal too many, never one too few.
        string inputs = await InputsAsync(asOf, cancellationToken);
        IReadOnlyList<Jar> kept = await jars.KeptAsync(cancellationToken);
        if (kept.Count == 0)
            return 0;
        var latest = (await forecasts.LatestAsync(cancellationToken)).ToDictionary(forecast => forecast.JarId, forecast => forecast.Inputs);
        List<Jar> stale = [.. kept.Where(jar => latest.GetValueOrDefault(jar.Id) != inputs)];
        if (stale.Count == 0)
            return 0;

        var placesById = (await places.AllAsync(cancellationToken)).ToDictionary(place => place.Id);
        Instant from = stale.Select(jar => QuarterHour.Floor(jar.PackedAt)).Append(asOf - Surroundings.LearnedFrom).Min();
        TemperatureHistory history = await TemperatureHistory.ReadAsync(log, await sensors.AllAsync(cancellationToken), from, asOf, cancellationToken);
        foreach (Jar jar in stale)
        {
            cancellationToken.ThrowIfCancellationRequested();
            await forecasts.SaveAsync([JarForecaster.Forecast(jar, placesById, history, asOf, inputs)], cancellationToken);
        }
        return stale.Count;
    }

    private async Task<string> InputsAsync(Instant asOf, CancellationToken cancellationToken)
    {
        long means = await log.MeansRevisionAsync(cancellationToken);
        long facts = await household.RevisionAsync(cancellationToken);
        return string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Forecaster.ModelVersion}/{asOf.ToUnixTimeSeconds()}/{means}/{facts}");
    }
}
