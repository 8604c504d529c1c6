using FermentWatch.Acts.Households;
using FermentWatch.Kinetics;
using FermentWatch.Kinetics.Household;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Planning;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Planning;

/// <summary>What to put up when, so that it lasts. Writes nothing.</summary>
public sealed class AskPlan(IHouseholdBook households, ReadyPlaces ready, IJarBook jars, IForecastBook forecasts, IMemberBook members,
    ISensorBook sensors, IReadingLog log, TimeProvider clock)
{
    private const int EndedJarsAsked = 100, HoursThatTell = 72;

    /// <summary>The form filled in with what the household's records tell, and the plan where anything was asked.</summary>
    public async Task<PlanReply> ForAsync(PlanForm typed, CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        Instant now = clock.GetUtcNow().ToInstant();
        LocalDate today = now.InZone(household.Zone).Date;
        IReadOnlyList<Place> places = await ready.OfferAsync(cancellationToken);
        IReadOnlyList<Jar> kept = await jars.KeptAsync(cancellationToken);
        Roster roster = await members.RosterAsync(today, cancellationToken);
        var reading = new PlanReading(household, places, await MeasuredAsync(now, cancellationToken), today);
        PlanForm form = typed.Over(PlanDefaults.Of(household, places, reading, kept, await jars.EndedLastAsync(EndedJarsAsked, cancellationToken),
            roster.Members.Count(member => member.SignsIn), today));
        if (typed.IsEmpty)
            return new PlanReply(form, household, places, null, null, []);
        (PlanQuestion? question, IReadOnlyList<Refusal> refusals) = reading.Read(form);
        if (question is null)
            return new PlanReply(form, household, places, null, null, refusals);
        var pauses = (await members.PausesAsync(today, cancellationToken)).Where(pause => pause.Until > pause.From && pause.Until > today)
            .Select(pause => new Absence(pause.From, pause.Until));
        question = question with { Away = [.. question.Away, .. pauses] };
        var latest = (await forecasts.LatestAsync(cancellationToken)).ToDictionary(forecast => forecast.JarId);
        // What finished jars taught is as the newest forecast has it.
        HouseholdPrior? taught = latest.Values.OrderByDescending(forecast => forecast.AsOf).FirstOrDefault()?.Forecast.Household;
        var asked = new ReadyDayForecasts(question.Recipe, SournessLevel.Of(question.Target).AcidityPercentLactic, taught);
        IReadOnlyList<Lot> stock = PlanStock.Of(kept, latest, question.Vegetable.Name, today, household.Zone);
        return new PlanReply(form, household, places, new Planner(stock, asked.Of).Make(question), PowerOut.Of(question, asked), []);
    }

    /// <summary>The mean of the last three weeks of every place in which enough was measured, by its id.</summary>
    private async Task<IReadOnlyDictionary<Guid, double>> MeasuredAsync(Instant now, CancellationToken cancellationToken)
    {
        var means = new List<(Guid Place, double Celsius)>();
        foreach (Sensor sensor in await sensors.AllAsync(cancellationToken))
            foreach (ReadingMean mean in await log.MeansAsync(sensor.Key, Quantity.Temperature, MeanSpan.Hour, now - Surroundings.LearnedFrom, now,
                cancellationToken))
                if (sensor.PlacementAt(mean.Start)?.PlaceId is { } place)
                    means.Add((place, mean.Value));
        return means.GroupBy(mean => mean.Place).Where(of => of.Count() >= HoursThatTell)
            .ToDictionary(of => of.Key, of => of.Average(mean => mean.Celsius));
    }
}

/// <summary>The form, and the plan where one was asked and could be read.</summary>
/// <param name="Form">What was typed, and what stands where nothing was.</param>
/// <param name="Household">For units.</param>
/// <param name="Places">Where jars may stand.</param>
/// <param name="Plan">The plan; null where nothing was asked or something was wrong.</param>
/// <param name="PowerOut">What becomes of a jar if the power fails; null where it is not asked.</param>
/// <param name="Refusals">What was wrong.</param>
public sealed record PlanReply(PlanForm Form, Household Household, IReadOnlyList<Place> Places, Plan? Plan, PowerOut? PowerOut,
    IReadOnlyList<Refusal> Refusals);
