using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Rounds;
using NodaTime;

namespace FermentWatch.Kitchen.Calendar;

/// <summary>What a person's calendar shows.</summary>
/// <param name="Household">The household.</param>
/// <param name="Tastes">The next tasting of each jar, by number.</param>
/// <param name="Rounds">The rounds of the coming days that fall to this person, by date.</param>
public sealed record ComingDays(Household Household, IReadOnlyList<ComingTaste> Tastes, IReadOnlyList<ComingRound> Rounds);

/// <summary>The round of a date from today on, as things stand.</summary>
/// <param name="Date">The date.</param>
/// <param name="DueAt">The household's hour on it.</param>
/// <param name="Title">The heading of its message.</param>
/// <param name="Body">The message.</param>
/// <param name="DoneAt">When the last of its jars was answered for; null where some wait.</param>
/// <param name="RevisedAt">When what this is drawn from last changed.</param>
public sealed record ComingRound(LocalDate Date, Instant DueAt, string Title, string Body, Instant? DoneAt, Instant RevisedAt);

/// <summary>The day on which a jar is tasted next.</summary>
/// <param name="JarId">The jar.</param>
/// <param name="Number">Its number.</param>
/// <param name="Name">What the household calls it.</param>
/// <param name="Place">Where it stands.</param>
/// <param name="Date">The first day of tasting; today where that is past.</param>
/// <param name="Words">When to taste, in words.</param>
/// <param name="RevisedAt">When what this is drawn from last changed: a fact of the jar, or its forecast.</param>
public sealed record ComingTaste(Guid JarId, int Number, string Name, string Place, LocalDate Date, string Words, Instant RevisedAt);

/// <summary>Reads what a person's calendar shows. The same records on the same date give the same.</summary>
public sealed class ComingDaysReader(
    IHouseholdBook households, IMemberBook members, IJarBook jars, IPlaceBook places, IForecastBook forecasts, IRoundBook opened, RoundPass rounds)
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
        var tasting = new TastingPlan(kept, latest, household,
            await opened.ForTastingAsync(today, cancellationToken));
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
