using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Places;
using FermentWatch.Web.Pages.Shared;
using NodaTime;
using NodaTime.TimeZones;

namespace FermentWatch.Web.Pages.Home;

/// <summary>What can be chosen for a household and its places.</summary>
internal static class HomeChoices
{
    public static readonly IReadOnlyList<Choice> Zones =
    [
        new("UTC", "UTC"),
        .. TzdbDateTimeZoneSource.Default.ZoneLocations!.Select(location => location.ZoneId).Distinct().Order(StringComparer.Ordinal)
            .Select(zone => new Choice(zone, zone.Replace('_', ' '))),
    ];

    public static readonly IReadOnlyList<Choice> TemperatureUnits =
        [new(nameof(TemperatureUnit.Celsius), "Celsius"), new(nameof(TemperatureUnit.Fahrenheit), "Fahrenheit")];

    public static readonly IReadOnlyList<Choice> MassUnits =
        [new(nameof(MassUnit.Kilogram), "kilograms, litres"), new(nameof(MassUnit.Pound), "pounds, quarts")];

    public static readonly IReadOnlyList<Choice> ScriptScopes =
    [
        new(nameof(ScriptScope.Read), "read"), new(nameof(ScriptScope.Record), "read and record"),
        new(nameof(ScriptScope.Manage), "do all that you may"),
    ];

    public static readonly IReadOnlyList<Choice> ClockFaces =
        [new(nameof(ClockFace.TwentyFourHours), "18:00"), new(nameof(ClockFace.TwelveHours), "6:00 pm")];

    public static readonly IReadOnlyList<Choice> WeekStarts =
        [new(nameof(IsoDayOfWeek.Monday), "Monday"), new(nameof(IsoDayOfWeek.Sunday), "Sunday"), new(nameof(IsoDayOfWeek.Saturday), "Saturday")];

    public static readonly IReadOnlyList<Choice> PhTools =
        [new(nameof(PhTool.Nothing), "nothing"), new(nameof(PhTool.Strips), "strips"), new(nameof(PhTool.Meter), "a meter"),
            new(nameof(PhTool.Probe), "a probe")];

    public static readonly IReadOnlyList<Choice> MouldPolicies =
        [new(nameof(MouldPolicy.ThrowOut), "Throw the jar out (stricter)"), new(nameof(MouldPolicy.SkimSmallPatches), "Skim small patches")];

    /// <summary>The temperatures in words with what is meant by them, in the household's unit.</summary>
    public static IReadOnlyList<Choice> Typical(TemperatureUnit unit) =>
        [.. Enum.GetValues<TypicalTemperature>().Select(word =>
            new Choice(word.ToString(), $"{word.Words()}, about {Kitchen.Words.MeasureWords.Temperature(word.Room().MeanCelsius, unit)}"))];

    /// <summary>The zones, with one more if the household has a name that is not among them.</summary>
    public static IReadOnlyList<Choice> ZonesWith(string? zone) =>
        string.IsNullOrEmpty(zone) || Zones.Any(choice => choice.Value == zone) ? Zones : [new(zone, zone), .. Zones];
}

/// <summary>Somebody new, as typed.</summary>
public sealed class NewMemberInput
{
    public string? Name { get; set; }

    /// <summary><c>Adult</c> or <c>Child</c>.</summary>
    public string? Role { get; set; }

    public string? Password { get; set; }
}
