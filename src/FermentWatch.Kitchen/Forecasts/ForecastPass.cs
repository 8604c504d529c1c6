using FermentWatch.Kinetics.Household;
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
    private readonly HouseholdLessons _lessons = new(log);
    private (Instant AsOf, long Means, long Facts)? _seen;

    /// <summary>Renews what needs renewing as of the last quarter hour that closed before <paramref name="now"/>. Returns how many.</summary>
    public async Task<int> RunAsync(Instant now, CancellationToken cancellationToken)
    {
        Instant asOf = QuarterHour.Floor(now);
        // Revisions are read before the facts: a change in between makes one look too many, never one too few.
        var seen = (asOf, await log.MeansRevisionAsync(cancellationToken), await household.RevisionAsync(cancellationToken));
        if (seen == _seen)
            return 0;
        int renewed = await RenewAsync(asOf, seen.Item2, cancellationToken);
        _seen = seen;
        return renewed;
    }

    private async Task<int> RenewAsync(Instant asOf, long meansRevision, CancellationToken cancellationToken)
    {
        IReadOnlyList<Jar> kept = await jars.KeptAsync(cancellationToken), ended = await jars.EndedLastAsync(HouseholdLessons.EndedJarsAsked, cancellationToken);
        IReadOnlyList<Place> everyPlace = await places.AllAsync(cancellationToken);
        IReadOnlyList<Sensor> everySensor = await sensors.AllAsync(cancellationToken);
        var placesById = everyPlace.ToDictionary(place => place.Id);
        HouseholdPrior? taught = await _lessons.ReadAsync([.. ended, .. kept], placesById, everySensor, meansRevision, cancellationToken);
        var inputs = new ForecastInputs(asOf, meansRevision, everyPlace, everySensor, taught);
        var latest = (await forecasts.LatestAsync(cancellationToken)).ToDictionary(forecast => forecast.JarId, forecast => forecast.Inputs);
        var stale = kept.Where(jar => jar.Stage is JarStage.Fermenting or JarStage.Cold).Select(jar => (Jar: jar, Inputs: inputs.Of(jar)))
            .Where(each => latest.GetValueOrDefault(each.Jar.Id) != each.Inputs).ToList();
        if (stale.Count == 0)
            return 0;

        Instant from = stale.Select(each => QuarterHour.Floor(each.Jar.PackedAt)).Append(asOf - Surroundings.LearnedFrom).Min();
        TemperatureHistory history = await TemperatureHistory.ReadAsync(log, everySensor, from, asOf, cancellationToken);
        foreach ((Jar jar, string name) in stale)
        {
            cancellationToken.ThrowIfCancellationRequested();
            await forecasts.SaveAsync([JarForecaster.Forecast(jar, placesById, history, asOf, taught, name)], cancellationToken);
        }
        return stale.Count;
    }
}
