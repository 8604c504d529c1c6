using System.Globalization;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Planning;
using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using NodaTime;

namespace FermentWatch.Notices.Feeds;

/// <summary>
/// A plan as an iCalendar file (RFC 5545): for each start a day to put up, a day to taste from and a day by which it goes into the cold. A start is
/// known by its date, so that a plan brought in anew moves nothing that stayed.
/// </summary>
public sealed class PlanFile : IPlanFile
{
    /// <inheritdoc/>
    public string MediaType => "text/calendar; charset=utf-8";

    /// <inheritdoc/>
    public string Of(Plan plan, Household household)
    {
        var calendar = new Ical.Net.Calendar { ProductId = "-//FermentWatch//Plan of the kitchen//EN" };
        calendar.AddProperty("X-WR-CALNAME", $"{household.Name}: plan");
        var words = new PlanWords(plan, household);
        var stamp = new CalDateTime(plan.Question.Today.Year, plan.Question.Today.Month, plan.Question.Today.Day, 0, 0, 0, CalDateTime.UtcTzId);
        foreach (PlannedStart start in plan.Starts)
        {
            string vessels = words.Vessels(start.Filled), name = plan.Question.Vegetable.Name;
            void Add(string what, LocalDate date, string summary, string description) => calendar.Events.Add(new CalendarEvent
            {
                Uid = string.Create(CultureInfo.InvariantCulture, $"plan-{what}-{start.Date:uuuu-MM-dd}-{household.Id}"), DtStamp = stamp,
                Start = Day(date), End = Day(date.PlusDays(1)), Summary = summary, Description = description,
                Transparency = TransparencyType.Transparent,
            });
            Add("start", start.Date, $"Put up {name}: {vessels}", $"{words.Contents(start.Shopping)}. In {plan.Question.Place}. "
                + string.Join(" ", words.InEach()));
            Add("taste", start.TasteFrom, $"Taste from today on: {name} of {words.Day(start.Date)}",
                $"Probably {words.Sour} {words.Day(start.Likely)}; nine in ten are by {words.Day(start.Late)}. A plan is not a measurement.");
            Add("cold", start.IntoTheColdBy, $"Into the cold by today: {name} of {words.Day(start.Date)}",
                $"What tasted right goes into {plan.Question.Store}, under a solid lid.");
        }
        return new CalendarSerializer().SerializeToString(calendar)!;
    }

    private static CalDateTime Day(LocalDate date) => new(date.Year, date.Month, date.Day);
}
