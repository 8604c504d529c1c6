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

    public ClockFace ClockFace { get; set; } = ClockFace.TwentyFourHours;

    /// <summary>The day with which its week begins, as its week sheet and rows of weekdays show it.</summary>
    public IsoDayOfWeek WeekStart { get; set; } = IsoDayOfWeek.Monday;

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

/// <summary>The unit in which this household weighs.</summary>
public enum MassUnit
{
    Kilogram = 1,
    Pound = 2,
}

/// <summary>How this household reads the time of day.</summary>
public enum ClockFace
{
    /// <summary><c>18:00</c>.</summary>
    TwentyFourHours = 1,

    /// <summary><c>6:00 pm</c>.</summary>
    TwelveHours = 2,
}

/// <summary>The unit in which this household reads temperatures.</summary>
public enum TemperatureUnit
{
    Celsius = 1,
    Fahrenheit = 2,
}

/// <summary>What a household can measure a pH with. What it is asked for follows; what it enters counts by the method entered.</summary>
public enum PhTool
{
    /// <summary>Nothing: no jar is asked for its pH.</summary>
    Nothing = 0,

    Strips = 1,
    Meter = 2,

    /// <summary>A probe that stands in a jar or is dipped, with its checks in buffer.</summary>
    Probe = 3,
}

/// <summary>What this household does about mould, where public advice disagrees. Whoever cannot tell film from mould treats it as mould under
/// either.</summary>
public enum MouldPolicy
{
    /// <summary>Any mould: the jar goes. The default, and the stricter advice.</summary>
    ThrowOut = 0,

    /// <summary>Small patches of green or grey on top may be skimmed; much of it, and black, pink or orange: the jar goes (Oregon State SP 50-745;
    /// Ask Extension).</summary>
    SkimSmallPatches = 1,
}

/// <summary>What a person may do.</summary>
public enum MemberRole
{
    /// <summary>Everything.</summary>
    Adult = 1,

    /// <summary>Look at jars and report; pH, first tastes and trouble are for adults.</summary>
    Child = 2,
}

/// <summary>The record of the household itself.</summary>
public interface IHouseholdBook
{
    /// <summary>The household; a new database has one with the defaults, in UTC.</summary>
    Task<Household> ReadAsync(CancellationToken cancellationToken);

    Task WriteAsync(Household household, CancellationToken cancellationToken);

    /// <summary>Grows with every recorded fact (places, sensors, jars, observations, the household), not with derived rows.</summary>
    Task<long> RevisionAsync(CancellationToken cancellationToken);
}
