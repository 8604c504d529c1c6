using System.Text.Json.Serialization;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Typed;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Acts.Households;

/// <summary>Writes down what holds for the household.</summary>
public sealed class DescribeHousehold(IHouseholdBook households)
{
    /// <summary>Writes what holds for the household; what was wrong, or nothing.</summary>
    public async Task<IReadOnlyList<Refusal>> DoAsync(HouseholdInput input, CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        if (Shown.Check("household", input.Shown, FactsOf(household)) is { } older)
            return [older];
        var reader = new FieldReader();
        household.Name = reader.ReadName("name", input.Name);
        household.TimeZoneId = ReadZone(input.TimeZone, reader);
        household.TemperatureUnit = reader.ReadChoice("temperature unit", input.TemperatureUnit, household.TemperatureUnit);
        household.MassUnit = reader.ReadChoice("mass unit", input.MassUnit, household.MassUnit);
        household.ClockFace = reader.ReadChoice("clock", input.ClockFace, household.ClockFace);
        household.WeekStart = ReadWeekStart(input.WeekStart, household.WeekStart, reader);
        household.Mould = reader.ReadChoice("mould", input.Mould, household.Mould);
        household.PhTool = reader.ReadChoice("pH", input.PhTool, household.PhTool);
        household.RoundAt = reader.ReadTimeOfDay("morning round", input.RoundAt, "07:00") ?? household.RoundAt;
        household.EveningAt = reader.ReadTimeOfDay("evening", input.EveningAt, "07:00") ?? household.EveningAt;
        if (household.EveningAt <= household.RoundAt)
            reader.Refuse("evening", input.EveningAt, "a time after the morning round would be right");
        if (reader.Refusals.Count == 0)
            await households.WriteAsync(household, cancellationToken);
        return reader.Refusals;
    }

    /// <summary>What a form about it shows.</summary>
    public static IEnumerable<(string Field, string Value)> FactsOf(Household household) =>
    [
        ("name", household.Name), ("time zone", household.TimeZoneId), ("temperatures in", household.TemperatureUnit.ToString()),
        ("weights in", household.MassUnit.ToString()), ("times as", household.ClockFace == ClockFace.TwelveHours ? "6:00 pm" : "18:00"),
        ("morning round", ClockWords.Of(household.RoundAt, ClockFace.TwentyFourHours)),
        ("asked again at", ClockWords.Of(household.EveningAt, ClockFace.TwentyFourHours)),
        ("week from", household.WeekStart.ToString()),
        ("pH by", household.PhTool.ToString().ToLowerInvariant()),
        ("mould", household.Mould == MouldPolicy.ThrowOut ? "the jar goes" : "small patches are skimmed"),
    ];

    private static IsoDayOfWeek ReadWeekStart(string? typed, IsoDayOfWeek known, FieldReader reader)
    {
        if (string.IsNullOrWhiteSpace(typed))
            return known;
        if (Enum.TryParse(typed.Trim(), ignoreCase: true, out IsoDayOfWeek read) && read is >= IsoDayOfWeek.Monday and <= IsoDayOfWeek.Sunday)
            return read;
        reader.Refuse("week start", typed, "a day of the week would be right, such as Monday");
        return known;
    }

    private static string ReadZone(string? typed, FieldReader reader)
    {
        string zone = (typed ?? "").Trim();
        if (DateTimeZoneProviders.Tzdb.GetZoneOrNull(zone) is null)
            reader.Refuse("time zone", typed, "a name of the tz database would be right, such as Europe/Vienna");
        return zone;
    }
}

/// <summary>What holds for the household, as typed.</summary>
public sealed class HouseholdInput
{
    public string? Name { get; set; }

    public string? TimeZone { get; set; }

    public string? TemperatureUnit { get; set; }

    public string? MassUnit { get; set; }

    /// <summary>How it reads the time of day.</summary>
    public string? ClockFace { get; set; }

    /// <summary>The day with which its week begins.</summary>
    public string? WeekStart { get; set; }

    /// <summary>When the morning round is due, <c>07:00</c>.</summary>
    public string? RoundAt { get; set; }

    /// <summary>What it does about mould.</summary>
    public string? Mould { get; set; }

    /// <summary>What it measures a pH with.</summary>
    public string? PhTool { get; set; }

    /// <summary>When jars nobody looked at are asked for again.</summary>
    public string? EveningAt { get; set; }

    /// <summary>What the form showed when it was opened, by <see cref="Kitchen.Typed.Shown"/>; left out by scripts.</summary>
    [JsonIgnore]
    public string? Shown { get; set; }
}
