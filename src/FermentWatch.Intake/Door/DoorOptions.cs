using FermentWatch.Kitchen.Judging;
using NodaTime;

namespace FermentWatch.Intake.Door;

/// <summary>Settings of the door through which every reading comes, whichever broker it came by.</summary>
public sealed class DoorOptions
{
    /// <summary>
    /// How far ahead of ours the time of a reading may be and still be stored, 5 minutes to 366 days. Default: one day. What is more
    /// than 5 minutes ahead is stored and does not count.
    /// </summary>
    public TimeSpan LongestAhead { get; set; } = TimeSpan.FromDays(1);

    /// <summary>How long ago a reading may have been measured and still be stored, 1 to 36525 days. Default: three years.</summary>
    public TimeSpan LongestBack { get; set; } = TimeSpan.FromDays(1096);

    /// <summary>Everything wrong with the settings: which, what came, what would be right.</summary>
    public IEnumerable<string> Errors()
    {
        if (LongestAhead < ReadingJudge.ClockMayLead.ToTimeSpan() || LongestAhead > TimeSpan.FromDays(366))
            yield return $"LongestAhead is {LongestAhead}; a time from 00:05:00 to 366.00:00:00 belongs here.";
        if (LongestBack < TimeSpan.FromDays(1) || LongestBack > TimeSpan.FromDays(36_525))
            yield return $"LongestBack is {LongestBack}; a time from 1.00:00:00 to 36525.00:00:00 belongs here.";
    }

    /// <summary>What is wrong with the time of a reading; null where it can be believed.</summary>
    internal string? Disbelief(Instant measuredAt, Instant receivedAt)
    {
        // Differences of instants never overflow; sums of them do, at the ends of the calendar.
        Duration ahead = measuredAt - receivedAt;
        if (ahead > Duration.FromTimeSpan(LongestAhead))
            return $"The time {measuredAt} lies more than {Words(LongestAhead)} ahead of ours; set the device's clock, or send no time.";
        return -ahead > Duration.FromTimeSpan(LongestBack)
            ? $"The time {measuredAt} lies more than {Words(LongestBack)} back; set the device's clock, or send no time."
            : null;
    }

    private static string Words(TimeSpan span) => span.TotalHours < 48
        ? FormattableString.Invariant($"{span.TotalHours:0.##} hours")
        : FormattableString.Invariant($"{span.TotalDays:0.##} days");
}
