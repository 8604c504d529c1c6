using System.Globalization;
using FermentWatch.Kitchen.Calendar;
using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using NodaTime;
using Duration = Ical.Net.DataTypes.Duration;

namespace FermentWatch.Notices.Feeds;

/// <summary>
/// The coming days as an iCalendar file (RFC 5545): tasting days as events of a whole day, rounds as to-dos with an alarm at the
/// household's hour. Times are in UTC, so that no time zone has to be described and a change of the clocks cannot be told wrong;
/// a calendar shows them on its own clock. Identifiers and stamps depend on what is shown only: the same days give the same bytes.
/// </summary>
public sealed class CalendarFile : ICalendarFile
{
    private const string AskAgainAfter = "PT1H";

    /// <inheritdoc/>
    public string MediaType => "text/calendar; charset=utf-8";

    /// <inheritdoc/>
    public string Of(ComingDays days, Uri? root)
    {
        var calendar = new Ical.Net.Calendar { ProductId = "-//FermentWatch//Calendar of the kitchen//EN" };
        calendar.AddProperty("X-WR-CALNAME", $"{days.Household.Name}: jars");
        calendar.AddProperty("X-PUBLISHED-TTL", AskAgainAfter);
        var refresh = new CalendarProperty("REFRESH-INTERVAL", AskAgainAfter);
        refresh.AddParameter("VALUE", "DURATION");
        calendar.AddProperty(refresh);
        foreach (ComingTaste taste in days.Tastes)
            calendar.Events.Add(Event(taste, root));
        foreach (ComingRound round in days.Rounds)
            calendar.Todos.Add(Todo(round, days.Household.Id, root));
        return new CalendarSerializer().SerializeToString(calendar)!;
    }

    private static CalendarEvent Event(ComingTaste taste, Uri? root)
    {
        var day = new CalendarEvent
        {
            Uid = $"taste-{taste.JarId}", DtStamp = Utc(taste.RevisedAt), Start = Day(taste.Date), End = Day(taste.Date.PlusDays(1)),
            Summary = string.Create(CultureInfo.InvariantCulture, $"Taste jar {taste.Number}: {taste.Name}"),
            Description = $"{taste.Words} It stands here: {taste.Place}.", Transparency = TransparencyType.Transparent,
        };
        if (root is not null)
            day.Url = new Uri(root, string.Create(CultureInfo.InvariantCulture, $"jars/{taste.Number}"));
        return day;
    }

    private static Todo Todo(ComingRound round, Guid household, Uri? root)
    {
        var todo = new Todo
        {
            Uid = string.Create(CultureInfo.InvariantCulture, $"round-{round.Date:uuuu-MM-dd}-{household}"), DtStamp = Utc(round.RevisedAt),
            Due = Utc(round.DueAt), Summary = round.Title, Description = round.Body, Status = round.DoneAt is null ? TodoStatus.NeedsAction
                : TodoStatus.Completed,
        };
        if (root is not null)
            todo.Url = root;
        if (round.DoneAt is { } done)
        {
            todo.Completed = Utc(done);
            todo.PercentComplete = 100;
        }
        else
        {
            var whenDue = new Trigger(Duration.Zero);
            // Relative to the end, which for a to-do is when it is due: one without a start has no other (section 3.8.6.3). By its
            // name, as the library writes no other.
            whenDue.Parameters.Set("RELATED", "END");
            todo.Alarms.Add(new Alarm { Action = AlarmAction.Display, Description = round.Title, Trigger = whenDue });
        }
        return todo;
    }

    private static CalDateTime Utc(Instant instant) => new(instant.ToDateTimeUtc(), CalDateTime.UtcTzId, hasTime: true);

    private static CalDateTime Day(LocalDate date) => new(date.Year, date.Month, date.Day);
}
