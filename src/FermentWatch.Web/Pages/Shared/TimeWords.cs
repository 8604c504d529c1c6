using System.Globalization;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Web.Pages.Shared;

/// <summary>Instants as this household reads them.</summary>
public static class TimeWords
{
    /// <summary>Day and time: <c>today 18:00</c>, <c>4 October 07:15</c>.</summary>
    public static string Of(Instant instant, Instant now, Household household) =>
        $"{DateWords.Name(instant.InZone(household.Zone).Date, now.InZone(household.Zone).Date)} {ClockWords.Of(instant, household)}";

    /// <summary>How long ago: <c>just now</c>, <c>12 minutes ago</c>, <c>5 hours ago</c>, <c>3 days ago</c>.</summary>
    public static string Ago(Instant instant, Instant now)
    {
        Duration age = now - instant;
        return age.TotalMinutes switch
        {
            < 2 => "just now",
            < 120 => string.Create(CultureInfo.InvariantCulture, $"{age.TotalMinutes:0} minutes ago"),
            < 48 * 60 => string.Create(CultureInfo.InvariantCulture, $"{age.TotalHours:0} hours ago"),
            _ => string.Create(CultureInfo.InvariantCulture, $"{age.TotalDays:0} days ago"),
        };
    }

    /// <summary>An instant as HTML and scripts read it.</summary>
    public static string Iso(Instant instant) => NodaTime.Text.InstantPattern.General.Format(instant);
}
