using System.Globalization;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Places;
using NodaTime;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>Opens the round of each local date once, at the household's hour, and asks again in the evening.</summary>
public sealed class RoundPass(
    IHouseholdBook households, IRoundBook rounds, IJarBook jars, IPlaceBook places, IForecastBook forecasts, INoticeBook notices,
    IMemberBook members, DryPlaces dryPlaces, SetAside setAside)
{
    /// <summary>A clock that is set right by less moves no round; a morning that was told a day early is not told again.</summary>
    private static readonly Duration ClockWasAhead = Duration.FromHours(36);

    /// <summary>Opens what is due. Returns the dates it opened.</summary>
    public async Task<IReadOnlyList<LocalDate>> RunAsync(Instant now, CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        DateTimeZone zone = household.Zone;
        LocalDate today = now.InZone(zone).Date;
        // A clock that stands before the household began (no battery, just switched on) opens nothing and takes nothing back.
        if (now < household.FoundedAt)
            return [];
        Round? latest = await rounds.LastAsync(cancellationToken);
        if (latest?.OpenedAt - now > ClockWasAhead)
        {
            await rounds.TakeBackAfterAsync(now, cancellationToken);
            latest = await rounds.LastAsync(cancellationToken);
        }
        LocalDate last = latest?.Date ?? await BeginAsync(today, household, now, cancellationToken);
        var opened = new List<LocalDate>();
        foreach ((LocalDate date, Instant dueAt) in RoundCalendar.DueAfter(last, household.RoundAt, zone, now).ToList())
        {
            Roster roster = await members.RosterAsync(date, cancellationToken);
            bool isMissed = date < today;
            RoundSheet? sheet = isMissed || roster.PauseOn(date) is not null ? null : await SheetAsync(household, date, dueAt, cancellationToken);
            var round = new Round { Date = date, DueAt = dueAt, OpenedAt = now, Missed = isMissed, TasteAsked = sheet?.TasteAsked ?? [],
                DecideAsked = sheet?.DecideAsked ?? [] };
            if (await rounds.OpenAsync(round, await MorningAsync(household, roster, sheet, dueAt, cancellationToken), cancellationToken))
                opened.Add(date);
        }
        await AskAgainAsync(household, today, now, cancellationToken);
        return opened;
    }

    /// <summary>What is to be looked at on a date, as things stand.</summary>
    public async Task<RoundSheet> SheetAsync(Household household, LocalDate date, CancellationToken cancellationToken)
    {
        Instant dueAt = RoundCalendar.At(date, household.RoundAt, household.Zone)
            ?? throw new ArgumentOutOfRangeException(nameof(date), date, $"The zone {household.TimeZoneId} never had this date.");
        return await SheetAsync(household, date, dueAt, cancellationToken);
    }

    private async Task<RoundSheet> SheetAsync(Household household, LocalDate date, Instant dueAt, CancellationToken cancellationToken)
    {
        var placesById = (await places.AllAsync(cancellationToken)).ToDictionary(place => place.Id);
        var forecastsByJar = (await forecasts.LatestAsync(cancellationToken)).ToDictionary(forecast => forecast.JarId);
        IReadOnlySet<Guid> dry = await dryPlaces.ReadAsync(dueAt, cancellationToken);
        IReadOnlyList<Round> before = await rounds.ForTastingAsync(date, cancellationToken);
        using SetAside.SetAsideRun run = setAside.Begin("round");
        return new RoundPlan(placesById, forecastsByJar, household, before, dry, run).Of(date, dueAt, await jars.KeptAsync(cancellationToken));
    }

    private async Task<IReadOnlyList<Notice>> MorningAsync(
        Household household, Roster roster, RoundSheet? sheet, Instant dueAt, CancellationToken cancellationToken)
    {
        if (sheet is null || sheet.Shelves.Count == 0)
            return [];
        Instant pointless = RoundCalendar.At(sheet.Date, household.EveningAt, household.Zone) ?? dueAt + Duration.FromHours(12);
        return RoundMessages.Of(sheet, await AudienceAsync(roster, household, cancellationToken), roster, dueAt,
            Instant.Max(pointless, dueAt + Duration.FromHours(1)), RoundCalendar.EndOf(sheet.Date, household.Zone));
    }

    private async Task AskAgainAsync(Household household, LocalDate today, Instant now, CancellationToken cancellationToken)
    {
        if (RoundCalendar.At(today, household.EveningAt, household.Zone) is not { } evening || now < evening)
            return;
        Roster roster = await members.RosterAsync(today, cancellationToken);
        if (roster.PauseOn(today) is not null)
            return;
        RoundSheet sheet = await SheetAsync(household, today, cancellationToken);
        var waiting = sheet.Jars.Where(each => !each.LookedAtToday).ToList();
        if (waiting.Count == 0)
            return;
        Audience audience = await AudienceAsync(roster, household, cancellationToken);
        (string title, string body) = RoundWords.Evening(sheet);
        Instant endOfDay = RoundCalendar.EndOf(today, household.Zone);
        var draft = new NoticeDraft(string.Create(CultureInfo.InvariantCulture, $"evening/{today:uuuu-MM-dd}"), title, body, evening, endOfDay);
        // Louder from the second day on: not only those whose turn it was.
        bool again = waiting.Exists(each => each.DaysNotLookedAt > 0);
        IReadOnlyList<Notice> messages = draft.For(again ? audience.Everybody : audience.OfRound(today), audience);
        await notices.QueueAsync(RoundQuestion.Ask(messages, sheet, endOfDay), cancellationToken);
    }

    private async Task<Audience> AudienceAsync(Roster roster, Household household, CancellationToken cancellationToken) =>
        new(await notices.RoutesAsync(cancellationToken), roster, household.Zone);

    /// <summary>
    /// Writes down where the rounds of a new household begin: today if its hour is still to come, else tomorrow. The date before
    /// counts as missed, so that nobody is told of it.
    /// </summary>
    private async Task<LocalDate> BeginAsync(LocalDate today, Household household, Instant now, CancellationToken cancellationToken)
    {
        LocalDate before = RoundCalendar.At(today, household.RoundAt, household.Zone) > now ? today.PlusDays(-1) : today;
        await rounds.OpenAsync(new Round { Date = before, DueAt = now, OpenedAt = now, Missed = true }, [], cancellationToken);
        return before;
    }
}
