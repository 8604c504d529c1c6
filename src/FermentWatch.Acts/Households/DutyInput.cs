namespace FermentWatch.Acts.Households;

/// <summary>A person's days and quiet hours, as typed.</summary>
public sealed class DutyInput
{
    public string? Person { get; set; }

    /// <summary>Names of days.</summary>
    public List<string>? Days { get; set; }

    /// <summary>Begin of the quiet hours, <c>22:00</c>; empty for none.</summary>
    public string? QuietFrom { get; set; }

    /// <summary>End of the quiet hours; empty for none.</summary>
    public string? QuietUntil { get; set; }
}
