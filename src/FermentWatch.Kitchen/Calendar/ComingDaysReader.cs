using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Rounds;
using NodaTime;

namespace FermentWatch.Kitchen.Calendar;

/// <summary>Reads what a person's calendar shows. The same records on the same date give the same.</summary>
public sealed class ComingDaysReader(
    IHouseholdBook households, IMemberBook members, IJarBook jars, IPlaceBook places, IForecastBook forecasts, RoundPass rounds)
{
    private const int DaysOfRounds = 7;

    /// <summary>What is to come from an instant's date on: every tasting, and the rounds that fall to the person.</summary>
    public async Task<ComingDays> ReadAsync(string person, Instant now, CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        LocalDate today = now.InZone(household.Zone).Date;
        var latest = (await forecasts.LatestAsync(cancellationToken)).ToDictionary(forecast => forecast.JarId);
        var names = (await places.AllAsync(cancellationToken)).ToDictionary(place => place.Id, place => place.Name);
        IReadOnlyList<Jar> kept = await jars.KeptAsync(cancellationToken);
        var fermenting = kept.Where(jar => jar.Stage == JarStage.Fermenting).ToList();
        var tasting = new TastingPlan(kept, latest, household);
        var tastes = fermenting.Where(jar => latest.ContainsKey(jar.Id))
            .Select(jar => Taste(jar, latest[jar.Id], tasting.Of(jar, today), names[jar.PlacementAt(now).PlaceId],
                today)).OfType<ComingTaste>().ToList();
        Roster roster = await members.RosterAsync(today, cancellationToken);
        Func<RoundSheet, string> body = roster.Of(person).IsChild ? RoundWords.ChildBody : RoundWords.Body;
        var coming = new List<ComingRound>();
        foreach (LocalDate date in Enumerable.Range(0, DaysOfRounds).Select(today.PlusDays).Where(date =>
            roster.PauseOn(date) is null && roster.IsOn(person, date)))
            if (await RoundAsync(household, date, today, latest, body, cancellationToken) is { } round)
                coming.Add(round);
        return new ComingDays(household, tastes, coming);
    }

    /// <summary>One for each lot; none once its tasting days are over.</summary>
    private static ComingTaste? Taste(Jar jar, JarForecast forecast, TasteAsk? ask, string place, LocalDate today) =>
        ask is { From: { } first } && ask.By == jar.Number && !ask.IsPast(today)
            ? new ComingTaste(jar.Id, jar.Number, jar.Name, place, LocalDate.Max(first, today), Words(ask, first, today), RevisedAt(jar, forecast))
            : null;

    private static string Words(TasteAsk ask, LocalDate first, LocalDate today) =>
        (first <= today ? Tasting.Words(first, today) : "First taste, then until it is right.") + (ask.Others.Count > 0
            ? $" It stands for {NumberList.Say(ask.Others)}." : "");

    private async Task<ComingRound?> RoundAsync(
        Household household, LocalDate date, LocalDate today, Dictionary<Guid, JarForecast> latest, Func<RoundSheet, string> body,
            CancellationToken cancellationToken)
    {
        if (RoundCalendar.At(date, household.RoundAt, household.Zone) is not { } dueAt)
            return null;
        RoundSheet sheet = await rounds.SheetAsync(household, date, cancellationToken);
        if (sheet.Shelves.Count == 0)
            return null;
        // What was missed is known of today only.
        RoundSheet shown = date == today ? sheet
            : new RoundSheet(date, [.. sheet.Shelves.Select(shelf =>
            shelf with { Jars = [.. shelf.Jars.Select(each => each with { DaysNotLookedAt = 0 })] })]);
        var looked = sheet.Jars.Select(each => each.Jar).ToList();
        Instant? done = sheet.Jars.All(each => each.LookedAtToday) ? looked.Max(jar => LastAnswer(jar, date, household.Zone)) : null;
        return new ComingRound(date, dueAt, RoundWords.Title(shown), body(shown), done,
            looked.Max(jar => RevisedAt(jar, latest.GetValueOrDefault(jar.Id))));
    }

    private static Instant LastAnswer(Jar jar, LocalDate date, DateTimeZone zone) =>
        Answered.Of(jar).Where(each => each.At.InZone(zone).Date == date).Max(each => each.At);

    private static Instant RevisedAt(Jar jar, JarForecast? forecast) => jar.Observations
        .SelectMany(each => each.VoidedAt is { } voided ? [each.EnteredAt, voided] : new[] { each.EnteredAt })
        .Concat(jar.Placements.Select(placement => placement.From))
        .Append(jar.PackedAt).Append(forecast?.AsOf ?? jar.PackedAt).Max();
}
