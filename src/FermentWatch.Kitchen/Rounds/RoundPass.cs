using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Places;
using NodaTime;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>Opens the round of each local date once, at the household's hour, and asks again in the evening.</summary>
public sealed class RoundPass(
    IHouseholdBook households, IRoundBook rounds, IJarBook jars, IPlaceBook places, IForecastBook forecasts, INoticeBook notices)
{
    /// <summary>Opens what is due. Returns the dates it opened.</summary>
    public async Task<IReadOnlyList<LocalDate>> RunAsync(Instant now, CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        DateTimeZone zone = household.Zone;
        LocalDate today = now.InZone(zone).Date;
        LocalDate last = (await rounds.LastAsync(cancellationToken))?.Date ?? await BeginAsync(today, household, now, cancellationToken);
        var opened = new List<LocalDate>();
        foreach ((LocalDate date, Instant dueAt) in RoundCalendar.DueAfter(last, household.RoundAt, zone, now).ToList())
        {
            var round = new Round { Date = date, DueAt = dueAt, OpenedAt = now, Missed = date < today };
            IReadOnlyList<Notice> messages = round.Missed ? [] : await MorningAsync(household, date, dueAt, cancellationToken);
            if (await rounds.OpenAsync(round, messages, cancellationToken))
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
        return new RoundPlan(placesById, forecastsByJar, household.Zone).Of(date, dueAt, await jars.KeptAsync(cancellationToken));
    }

    private async Task<IReadOnlyList<Notice>> MorningAsync(Household household, LocalDate date, Instant dueAt, CancellationToken cancellationToken)
    {
        RoundSheet sheet = await SheetAsync(household, date, dueAt, cancellationToken);
        Instant pointless = RoundCalendar.At(date, household.EveningAt, household.Zone) ?? dueAt + Duration.FromHours(12);
        return sheet.Shelves.Count == 0
            ? []
            : RoundQuestion.Ask(await ToEverybodyAsync("round", date, RoundWords.Title(sheet), RoundWords.Body(sheet), dueAt, Instant.Max(pointless, dueAt + Duration.FromHours(1)), cancellationToken), sheet, household.Zone);
    }

    private async Task AskAgainAsync(Household household, LocalDate today, Instant now, CancellationToken cancellationToken)
    {
        if (RoundCalendar.At(today, household.EveningAt, household.Zone) is not { } evening || now < evening)
            return;
        RoundSheet sheet = await SheetAsync(household, today, cancellationToken);
        var waiting = sheet.Jars.Where(each => !each.LookedAtToday).ToList();
        if (waiting.Count == 0)
            return;
        string title = waiting.Count == 1 ? "One jar was not looked at today" : $"{waiting.Count} jars were not looked at today";
        Instant endOfDay = household.Zone.AtStartOfDay(today.PlusDays(1)).ToInstant();
        IReadOnlyList<Notice> messages = await ToEverybodyAsync("evening", today, title, RoundWords.EveningBody(sheet), evening, endOfDay, cancellationToken);
        await notices.QueueAsync(RoundQuestion.Ask(messages, sheet, household.Zone), cancellationToken);
    }

    private async Task<IReadOnlyList<Notice>> ToEverybodyAsync(
        string occasion, LocalDate date, string title, string body, Instant dueAt, Instant expiresAt, CancellationToken cancellationToken) =>
        [.. (await notices.RoutesAsync(cancellationToken)).Select(route => new Notice
        {
            Id = Guid.CreateVersion7(dueAt.ToDateTimeOffset()),
            Key = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{occasion}/{date:uuuu-MM-dd}/{route.Person}/{route.Id:N}"),
            RouteId = route.Id, Person = route.Person, Title = title, Body = body,
            DueAt = dueAt, ExpiresAt = expiresAt, NextAttemptAt = dueAt,
        })];

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
