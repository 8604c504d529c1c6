namespace FermentWatch.Acts.Rounds;

/// <summary>Days away, as typed.</summary>
public sealed class AwayInput
{
    /// <summary>The first date away, ISO.</summary>
    public string? From { get; set; }

    /// <summary>The date of coming back, ISO.</summary>
    public string? Until { get; set; }

    /// <summary>The pause that is ended; empty for a new one.</summary>
    public string? Ended { get; set; }
}
