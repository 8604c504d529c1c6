using FermentWatch.Kinetics.Temperature;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Sensors;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Jars;

/// <summary>Reads jars for the pages and the API.</summary>
public sealed class JarReader(
    IJarBook jars, IPlaceBook places, IHouseholdBook households, IForecastBook forecasts, IRoundBook rounds, ISensorBook sensors, IReadingLog log,
    TimeProvider clock)
{
    /// <summary>Dry air asks for a second look at the brine, which is the round's alone; it opens no jar.</summary>
    private static readonly IReadOnlySet<Guid> Unread = new HashSet<Guid>();

    /// <summary>Every kept jar, by number.</summary>
    public async Task<IReadOnlyList<JarView>> KeptAsync(CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        IReadOnlyList<Place> known = await places.AllAsync(cancellationToken);
        var latest = (await forecasts.LatestAsync(cancellationToken)).ToDictionary(forecast => forecast.JarId);
        Instant now = clock.GetUtcNow().ToInstant();
        IReadOnlyList<Jar> kept = await jars.KeptAsync(cancellationToken);
        var rules = new JarRules(household, latest, await TastingAsync(kept, latest, household, now, cancellationToken), Unread);
        return [.. kept.Select(jar => new JarView(jar, latest.GetValueOrDefault(jar.Id), known, household, now, On(rules, jar, household, now)))];
    }

    /// <summary>Every jar that is finished or thrown out, the last first.</summary>
    public async Task<IReadOnlyList<JarView>> PastAsync(CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        IReadOnlyList<Place> known = await places.AllAsync(cancellationToken);
        Instant now = clock.GetUtcNow().ToInstant();
        IReadOnlyList<Jar> ended = await jars.EndedLastAsync(int.MaxValue, cancellationToken);
        var none = new Dictionary<Guid, JarForecast>();
        var rules = new JarRules(household, none, new TastingPlan([], none, household, []), Unread);
        return [.. ended.OrderByDescending(jar => jar.EndedAt).ThenByDescending(jar => jar.Number)
            .Select(jar => new JarView(jar, null, known, household, now, On(rules, jar, household, now)))];
    }

    /// <summary>The record of one jar, from which nothing is worked out; null where there is none.</summary>
    public Task<Jar?> RecordAsync(int number, CancellationToken cancellationToken) => jars.FindAsync(number, cancellationToken);

    /// <summary>One jar, or null.</summary>
    public async Task<JarView?> FindAsync(int number, CancellationToken cancellationToken)
    {
        if (await jars.FindAsync(number, cancellationToken) is not { } jar)
            return null;
        Household household = await households.ReadAsync(cancellationToken);
        Instant now = clock.GetUtcNow().ToInstant();
        var latest = (await forecasts.LatestAsync(cancellationToken)).ToDictionary(each => each.JarId);
        // Jars alike are tasted for each other, so what is asked of one follows from all.
        TastingPlan tasting = await TastingAsync(await jars.KeptAsync(cancellationToken), latest, household, now, cancellationToken);
        var rules = new JarRules(household, latest, tasting, Unread);
        JarForecast? forecast = await forecasts.LatestAsync(jar.Id, cancellationToken);
        return new JarView(jar, forecast, await places.AllAsync(cancellationToken), household, now, On(rules, jar, household, now));
    }

    private async Task<TastingPlan> TastingAsync(IReadOnlyList<Jar> kept, Dictionary<Guid, JarForecast> latest, Household household, Instant now,
        CancellationToken cancellationToken) => new(kept, latest, household,
            await rounds.ForTastingAsync(now.InZone(household.Zone).Date, cancellationToken));

    private static RoundJar On(JarRules rules, Jar jar, Household household, Instant now)
    {
        LocalDate today = now.InZone(household.Zone).Date;
        return rules.On(jar, today, RoundCalendar.At(today, household.RoundAt, household.Zone) ?? now);
    }

    /// <summary>By how much a sensor, a strip or a meter would narrow a jar's forecast; null where it has none.</summary>
    public async Task<Sharpening?> SharpeningAsync(JarView view, CancellationToken cancellationToken)
    {
        return await AskedAsync(view, cancellationToken) is var (saved, history, known) ? Sharpening.Of(view.Jar, known, history, saved) : null;
    }

    /// <summary>What would become of a jar in each of these places from a day on; empty where nothing is forecast of it.</summary>
    public async Task<IReadOnlyList<WhatIf>> WhatIfAsync(JarView view, IEnumerable<(Place Place, double FromDay)> moves,
        CancellationToken cancellationToken)
    {
        if (await AskedAsync(view, cancellationToken) is not var (saved, history, known))
            return [];
        return [.. moves.Select(move => WhatIf.Moved(view.Jar, known, history, saved, move.Place, move.FromDay))];
    }

    /// <summary>Gas and sugar from now on, where it stays or in the cold; null where nothing is forecast of it.</summary>
    public async Task<StillToCome?> StillToComeAsync(JarView view, bool inTheCold, CancellationToken cancellationToken) =>
        await AskedAsync(view, cancellationToken) is var (saved, history, known)
            ? StillToCome.Of(view.Jar, known, history, saved, inTheCold ? TypicalRoom.Refrigerator : null) : null;

    /// <summary>What a question about a jar's days ahead is asked with; null where nothing is forecast of it.</summary>
    private async Task<(JarForecast Saved, TemperatureHistory History, IReadOnlyDictionary<Guid, Place> Places)?> AskedAsync(JarView view,
        CancellationToken cancellationToken)
    {
        if (view.Forecast is null || await forecasts.LatestAsync(view.Jar.Id, cancellationToken) is not { } saved)
            return null;
        TemperatureHistory history = await TemperatureHistory.OfJarAsync(log, await sensors.AllAsync(cancellationToken), view.Jar, saved.AsOf,
            cancellationToken);
        return (saved, history, (await places.AllAsync(cancellationToken)).ToDictionary(place => place.Id));
    }
}
