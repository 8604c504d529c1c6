using NodaTime;

namespace FermentWatch.Kitchen.Members;

/// <summary>On which days a person does the round, and when this person is sent nothing.</summary>
public sealed class Duty
{
    /// <summary>The name the household uses; the key.</summary>
    public required string Person { get; init; }

    public Weekdays Days { get; set; } = Weekdays.All;

    /// <summary>Begin of the quiet hours; null where there are none.</summary>
    public LocalTime? QuietFrom { get; set; }

    /// <summary>End of the quiet hours; null where there are none.</summary>
    public LocalTime? QuietUntil { get; set; }

    /// <summary>The quiet hours; null where there are none.</summary>
    public QuietHours? Quiet => QuietFrom is { } from && QuietUntil is { } until && from != until ? new QuietHours(from, until) : null;
}
