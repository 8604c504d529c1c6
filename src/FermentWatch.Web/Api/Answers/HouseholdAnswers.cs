using FermentWatch.Kitchen.Forwarding;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Places;
using NodaTime;

namespace FermentWatch.Web.Api.Answers;

/// <summary>The household.</summary>
/// <param name="Name">Its name.</param>
/// <param name="TimeZone">Its zone in the tz database.</param>
/// <param name="RoundAt">When the morning round is due, on its own clock.</param>
/// <param name="EveningAt">When jars nobody looked at are asked for again.</param>
/// <param name="TemperatureUnit">What its pages show; the API speaks Celsius.</param>
/// <param name="MassUnit">What its pages show; the API speaks kilograms.</param>
/// <param name="ClockFace">How its pages show the time of day; the API speaks ISO 8601.</param>
/// <param name="WeekStart">The day with which its week begins.</param>
/// <param name="PhTool">What it measures a pH with; what is asked for follows.</param>
/// <param name="Mould">What it does about mould.</param>
public sealed record HouseholdAnswer(
    string Name, string TimeZone, LocalTime RoundAt, LocalTime EveningAt, TemperatureUnit TemperatureUnit, MassUnit MassUnit, ClockFace ClockFace,
    IsoDayOfWeek WeekStart, PhTool PhTool, MouldPolicy Mould)
{
    public static HouseholdAnswer Of(Household household) => new(household.Name, household.TimeZoneId, household.RoundAt, household.EveningAt,
        household.TemperatureUnit, household.MassUnit, household.ClockFace, household.WeekStart, household.PhTool, household.Mould);
}

/// <summary>A place.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">What the household calls it.</param>
/// <param name="ShelfOrder">Order in which the round passes it.</param>
/// <param name="Typical">What the household says of its temperature.</param>
/// <param name="TypicalCelsius">The number behind it.</param>
public sealed record PlaceAnswer(Guid Id, string Name, int ShelfOrder, TypicalTemperature Typical, double TypicalCelsius)
{
    public static PlaceAnswer Of(Place place) => new(place.Id, place.Name, place.ShelfOrder, place.Typical, place.Typical.Room().MeanCelsius);
}

/// <summary>How the passing on of series stands.</summary>
/// <param name="Enabled">Whether there is a receiver.</param>
/// <param name="Trouble">Why points wait; null when none do.</param>
/// <param name="LeftOut">What was left out, by series and reason.</param>
public sealed record ForwardingAnswer(bool Enabled, string? Trouble, IReadOnlyList<NotForwardedAnswer> LeftOut);

/// <summary>Points that were left out for one reason.</summary>
/// <param name="Series">The series.</param>
/// <param name="Reason">Why.</param>
/// <param name="Count">How many.</param>
/// <param name="LastExample">The last of them.</param>
/// <param name="LastExplanation">What was said of it.</param>
/// <param name="LastAt">When that was.</param>
public sealed record NotForwardedAnswer(
    SeriesKind Series, NotForwardedReason Reason, long Count, string LastExample, string LastExplanation, Instant LastAt)
{
    public static NotForwardedAnswer Of(NotForwardedCount count) => new(
        count.Series, count.Last.Reason, count.Count, count.Last.Example, count.Last.Explanation, count.Last.At);
}
