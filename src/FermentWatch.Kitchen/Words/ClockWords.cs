using System.Globalization;
using FermentWatch.Kitchen.Households;
using NodaTime;

namespace FermentWatch.Kitchen.Words;

/// <summary>Times of day as this household reads them: <c>18:00</c>, or <c>6:00 pm</c>.</summary>
public static class ClockWords
{
    public static string Of(LocalTime time, ClockFace face) => face == ClockFace.TwelveHours
        ? time.ToString("h:mm", CultureInfo.InvariantCulture) + (time.Hour < 12 ? " am" : " pm")
        : time.ToString("HH:mm", CultureInfo.InvariantCulture);

    /// <summary>The time of day of an instant on the household's clock.</summary>
    public static string Of(Instant instant, Household household) => Of(instant.InZone(household.Zone).TimeOfDay, household.ClockFace);

    /// <summary>With its date and year, as what goes back for years: <c>3 March 2027 18:00</c>.</summary>
    public static string WithDate(Instant instant, Household household) =>
        $"{instant.InZone(household.Zone).Date.ToString("d MMMM uuuu", CultureInfo.InvariantCulture)} {Of(instant, household)}";
}
