namespace FermentWatch.Acts.Households;

/// <summary>What holds for the household, as typed.</summary>
public sealed class HouseholdInput
{
    public string? Name { get; set; }

    public string? TimeZone { get; set; }

    public string? TemperatureUnit { get; set; }

    public string? MassUnit { get; set; }

    /// <summary>When the morning round is due, <c>07:00</c>.</summary>
    public string? RoundAt { get; set; }

    /// <summary>What it does about mould.</summary>
    public string? Mould { get; set; }

    /// <summary>What it measures a pH with.</summary>
    public string? PhTool { get; set; }

    /// <summary>When jars nobody looked at are asked for again.</summary>
    public string? EveningAt { get; set; }
}
