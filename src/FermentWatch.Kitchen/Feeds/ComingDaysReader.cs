using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Kitchen.Feeds;

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
        var fermenting = (await jars.KeptAsync(cancellationToken)).Where(jar => jar.Stage == JarStage.Fermenting).ToList();
        var tastes = fermenting.Where(jar => latest.ContainsKey(jar.Id))
            .Select(jar => Taste(jar, latest[jar.Id], names[jar.PlacementAt(now).PlaceId], household.Zone, today)).OfType<ComingTaste>().ToList();
        Roster roster = await members.RosterAsync(today, cancellationToken);
        Func<RoundSheet, string> body = roster.Of(person).IsChild ? RoundWords.ChildBody : RoundWords.Body;
        var coming = new List<ComingRound>();
        foreach (LocalDate date in Enumerable.Range(0, DaysOfRounds).Select(today.PlusDays).Where(date => roster.PauseOn(date) is null && roster.IsOn(person, date)))
            if (await RoundAsync(household, date, today, latest, body, cancellationToken) is { } round)
                coming.Add(round);
        return new ComingDays(household, tastes, coming);
    }

    private static ComingTaste? Taste(Jar jar, JarForecast forecast, string place, DateTimeZone zone, LocalDate today) =>
        TastingDue.From(jar, forecast, zone) is { } first
            ? new ComingTaste(jar.Id, jar.Number, jar.Name, place, LocalDate.Max(first, today), first <= today ? Tasting.Words(first, today) : "First taste, then daily until it is right.", RevisedAt(jar, forecast))
            : null;

    private async Task<ComingRound?> RoundAsync(
        Household household, LocalDate date, LocalDate today, Dictionary<Guid, JarForecast> latest, Func<RoundSheet, string> body, CancellationToken cancellationToken)
    {
        if (RoundCalendar.At(date, household.RoundAt, household.Zone) is not { } dueAt)
            return null;
        RoundSheet sheet = await rounds.SheetAsync(household, date, cancellationToken);
        if (sheet.Shelves.Count == 0)
            return null;
        // What was missed is known of today only.
        RoundSheet shown = date == today ? sheet : new RoundSheet(date, [.. sheet.Shelves.Select(shelf => shelf with { Jars = [.. shelf.Jars.Select(each => each with { DaysNotLookedAt = 0 })] })]);
        var looked = sheet.Jars.Select(each => each.Jar).ToList();
        Instant? done = sheet.Jars.All(each => each.LookedAtToday) ? looked.Max(jar => LastAnswer(jar, date, household.Zone)) : null;
        return new ComingRound(date, dueAt, RoundWords.Title(shown), body(shown), done, looked.Max(jar => RevisedAt(jar, latest.GetValueOrDefault(jar.Id))));
    }

    private static Instant LastAnswer(Jar jar, LocalDate date, DateTimeZone zone) =>
        jar.Standing.Where(each => each is Look or Sighting or Observations.Taste or StageChange && each.At.InZone(zone).Date == date).Max(each => each.At);

    private static Instant RevisedAt(Jar jar, JarForecast? forecast) => jar.Observations
        .SelectMany(each => each.VoidedAt is { } voided ? [each.EnteredAt, voided] : new[] { each.EnteredAt })
        .Concat(jar.Placements.Select(placement => placement.From))
        .Append(jar.PackedAt).Append(forecast?.AsOf ?? jar.PackedAt).Max();
}
