using FermentWatch.Kitchen.Guides;
using FermentWatch.Kitchen.Households;
using NodaTime;

namespace FermentWatch.Service.Api.Answers;

/// <summary>The household.</summary>
/// <param name="Name">Its name.</param>
/// <param name="TimeZone">Its zone in the tz database.</param>
/// <param name="RoundAt">When the morning round is due, on its own clock.</param>
/// <param name="EveningAt">When jars nobody looked at are asked for again.</param>
/// <param name="TemperatureUnit">What its pages show; the API speaks Celsius.</param>
/// <param name="MassUnit">What its pages show; the API speaks kilograms.</param>
/// <param name="PhTool">What it measures a pH with; what is asked for follows.</param>
/// <param name="Mould">What it does about mould.</param>
public sealed record HouseholdAnswer(
    string Name, string TimeZone, LocalTime RoundAt, LocalTime EveningAt, TemperatureUnit TemperatureUnit, MassUnit MassUnit, PhTool PhTool, MouldPolicy Mould)
{
    public static HouseholdAnswer Of(Household household) => new(household.Name, household.TimeZoneId, household.RoundAt, household.EveningAt,
        household.TemperatureUnit, household.MassUnit, household.PhTool, household.Mould);
}
