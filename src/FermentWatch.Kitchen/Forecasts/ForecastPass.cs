using System.Collections.Concurrent;
using System.Globalization;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Household;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Kitchen.Forecasts;

/// <summary>Renews the forecasts of every kept jar whose inputs have changed.</summary>
public sealed class ForecastPass(
    IHouseholdBook household, IJarBook jars, IPlaceBook places, ISensorBook sensors, IReadingLog log, IForecastBook forecasts, SetAside setAside)
{
    /// <summary>Written down together: one commit in an ordinary pass, and no more than this is lost where a long first pass is cut off.</summary>
    private const int SavedTogether = 25;

    private readonly ConcurrentDictionary<Guid, KeptRun> _kept = [];
    private readonly HouseholdLessons _lessons = new(log);
    private (Instant Day, Instant? NewestMean, long Means, long Facts)? _seen;
    private HouseholdPrior? _taught;

    /// <summary>What forecasts cost so far.</summary>
    public ForecastCounts Counts { get; } = new();

    /// <summary>Renews what needs renewing as of the last quarter hour that closed before <paramref name="now"/>. Returns how many.</summary>
    public async Task<int> RunAsync(Instant now, CancellationToken cancellationToken)
    {
        Instant closed = QuarterHour.Floor(now);
        // Revisions are read before the facts: a change in between makes one look too many, never one too few.
        var revisions = (Means: await log.MeansRevisionAsync(cancellationToken), Facts: await household.RevisionAsync(cancellationToken));
        IReadOnlyList<Sensor> everySensor = await sensors.AllAsync(cancellationToken);
        var seen = (QuarterHour.FloorDay(closed), await NewestMeanAsync(everySensor, closed, cancellationToken), revisions.Means, revisions.Facts);
        if (seen == _seen)
            return 0;
        int renewed = await RenewAsync(closed, everySensor, cancellationToken);
        _seen = seen;
        return renewed;
    }

    /// <summary>
    /// Renews the forecasts of a few jars at once, for whoever has just entered something about them. What they teach others follows
    /// with the next pass.
    /// </summary>
    public async Task RenewAsync(IReadOnlyCollection<Jar> few, Instant now, CancellationToken cancellationToken)
    {
        using SetAside.SetAsideRun run = setAside.Begin("entry");
        var placesById = (await places.AllAsync(cancellationToken)).ToDictionary(place => place.Id);
        await RenewAsync(few, new MeansOfJars(log, await sensors.AllAsync(cancellationToken)), placesById, _taught, QuarterHour.Floor(now), run,
            cancellationToken);
    }

    private async Task<Instant?> NewestMeanAsync(IReadOnlyList<Sensor> everySensor, Instant closed, CancellationToken cancellationToken)
    {
        var lately = everySensor.Select(sensor => new SensorSpan(sensor.Key, closed - Duration.FromDays(1), closed)).ToList();
        return (await log.MeanStampsAsync(Quantity.Temperature, MeanSpan.QuarterHour, lately, cancellationToken)).Max(stamp => stamp.Newest);
    }

    private async Task<int> RenewAsync(Instant closed, IReadOnlyList<Sensor> everySensor, CancellationToken cancellationToken)
    {
        using SetAside.SetAsideRun run = setAside.Begin("forecast");
        IReadOnlyList<Jar> kept = await jars.KeptAsync(cancellationToken),
            ended = await jars.EndedLastAsync(HouseholdLessons.EndedJarsAsked, cancellationToken);
        var placesById = (await places.AllAsync(cancellationToken)).ToDictionary(place => place.Id);
        var still = kept.Select(jar => jar.Id).ToHashSet();
        foreach (Guid gone in _kept.Keys.Where(jar => !still.Contains(jar)))
            _kept.TryRemove(gone, out _);
        _taught = await _lessons.ReadAsync([.. ended, .. kept], placesById, everySensor, run, cancellationToken);
        return await RenewAsync(kept, new MeansOfJars(log, everySensor), placesById, _taught, closed, run, cancellationToken);
    }

    private async Task<int> RenewAsync(
        IReadOnlyCollection<Jar> among, MeansOfJars means, Dictionary<Guid, Place> placesById, HouseholdPrior? taught, Instant closed,
        SetAside.SetAsideRun run, CancellationToken cancellationToken)
    {
        var inputs = new ForecastInputs(means, placesById, taught);
        var latest = (await forecasts.LatestAsync(cancellationToken)).ToDictionary(forecast => forecast.JarId, forecast => forecast.Inputs);
        var stale = new List<NamedInputs>();
        var without = new List<Guid>();
        foreach (Jar jar in among.Where(jar => jar.Stage is JarStage.Fermenting or JarStage.Cold))
            await run.TryAsync(Named(jar), async () =>
            {
                if (NoForecast.Of(jar) is not null)
                {
                    without.Add(jar.Id);
                    return;
                }
                NamedInputs named = await inputs.OfAsync(jar, closed, cancellationToken);
                if (latest.GetValueOrDefault(jar.Id) != named.Name)
                    stale.Add(named);
            });
        without.RemoveAll(jar => !latest.ContainsKey(jar));
        if (without.Count > 0)
            await forecasts.ForgetAsync(without, cancellationToken);
        if (stale.Count == 0)
            return 0;

        TemperatureHistory history = await HistoryAsync(means, stale, cancellationToken);
        int saved = 0;
        foreach (NamedInputs[] together in stale.Chunk(SavedTogether))
        {
            var renewed = new List<RenewedForecast>();
            foreach (NamedInputs each in together)
            {
                cancellationToken.ThrowIfCancellationRequested();
                run.Try(Named(each.Jar), () => renewed.Add(new RenewedForecast(
                    Forecast(each, placesById, history, taught), latest.GetValueOrDefault(each.Jar.Id))));
            }
            await forecasts.SaveAsync(renewed, cancellationToken);
            saved += renewed.Count;
        }
        return saved;
    }

    /// <summary>Goes on from the jar's forecast before: news of a quarter hour costs that quarter hour and the span ahead.</summary>
    private JarForecast Forecast(NamedInputs of, IReadOnlyDictionary<Guid, Place> placesById, TemperatureHistory history, HouseholdPrior? taught)
    {
        long begun = TimeProvider.System.GetTimestamp();
        KeptRun? kept = _kept.GetValueOrDefault(of.Jar.Id);
        JarForecast forecast = JarForecaster.Forecast(of.Jar, placesById, history, of.AsOf, taught, of.Name, ref kept);
        if (kept is null)
            _kept.TryRemove(of.Jar.Id, out _);
        else
            _kept[of.Jar.Id] = kept;
        Counts.Count(TimeProvider.System.GetElapsedTime(begun));
        return forecast;
    }

    private async Task<TemperatureHistory> HistoryAsync(MeansOfJars means, List<NamedInputs> stale, CancellationToken cancellationToken)
    {
        Instant from = stale.Min(each => Instant.Min(QuarterHour.Floor(each.Jar.PackedAt), each.AsOf - Surroundings.LearnedFrom));
        IReadOnlyList<Sensor> among = means.AmongThem(stale.Select(each => (each.Jar, each.AsOf)));
        return await TemperatureHistory.ReadAsync(log, among, from, stale.Max(each => each.AsOf), cancellationToken);
    }

    private static string Named(Jar jar) => string.Create(CultureInfo.InvariantCulture, $"jar {jar.Number}");
}
