using NodaTime;

namespace FermentWatch.Kitchen.Households;

/// <summary>What holds for the whole household.</summary>
public sealed class Household
{
    public required Guid Id { get; init; }

    public required string Name { get; set; }

    /// <summary>Its time zone, a name of the tz database such as <c>Europe/Vienna</c>.</summary>
    public required string TimeZoneId { get; set; }

    /// <summary>When the morning round is due, on the household's own clock.</summary>
    public LocalTime RoundAt { get; set; } = new(7, 0);

    /// <summary>When jars that nobody looked at are asked for again.</summary>
    public LocalTime EveningAt { get; set; } = new(19, 0);

    public TemperatureUnit TemperatureUnit { get; set; } = TemperatureUnit.Celsius;

    public MassUnit MassUnit { get; set; } = MassUnit.Kilogram;

    /// <summary>What it does about mould; the stricter advice by default.</summary>
    public MouldPolicy Mould { get; set; } = MouldPolicy.ThrowOut;

    /// <summary>What it can measure a pH with; changed any day.</summary>
    public PhTool PhTool { get; set; } = PhTool.Nothing;

    /// <summary>The first date on which tasting is asked for again after "not tasting this week"; null where that was never said.</summary>
    public LocalDate? TastingAgainFrom { get; set; }

    /// <summary>Whether jars are asked for their pH at all.</summary>
    public bool Measures => PhTool != PhTool.Nothing;

    /// <summary>The zone rules behind <see cref="TimeZoneId"/>; UTC where the tz database of this version does not have the name.</summary>
    public DateTimeZone Zone => DateTimeZoneProviders.Tzdb.GetZoneOrNull(TimeZoneId) ?? DateTimeZone.Utc;

    /// <summary>When it was founded, as its id tells (RFC 9562, version 7); null for an id of another kind. No fact of it is older.</summary>
    public Instant? FoundedAt => Id.Version == 7
        ? Instant.FromUnixTimeMilliseconds(Convert.ToInt64(Id.ToString("N")[..12], 16)) : null;
}
