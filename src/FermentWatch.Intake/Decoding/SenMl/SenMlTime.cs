using NodaTime;

namespace FermentWatch.Intake.Decoding.SenMl;

/// <summary>The time rule of RFC 8428 section 4.5.3: seconds below 2^28 are relative to now, others count from the Unix epoch.</summary>
public static class SenMlTime
{
    /// <summary>2^28 seconds, where absolute times begin.</summary>
    public const double FirstAbsoluteSeconds = 268_435_456;

    // The last millisecond of the year 9999, beyond which calendars end.
    private const double LastMilliseconds = 253_402_300_799_999;

    /// <summary>Whether these seconds are relative to now.</summary>
    public static bool IsRelative(double seconds) => seconds < FirstAbsoluteSeconds;

    /// <summary>The instant, to the nearest millisecond; null if it lies before 1970 or after 9999.</summary>
    public static Instant? Resolve(double seconds, Instant now)
    {
        double milliseconds = Math.Round(seconds * 1000);
        if (IsRelative(seconds))
            milliseconds += now.ToUnixTimeMilliseconds();
        return milliseconds is >= 0 and <= LastMilliseconds ? Instant.FromUnixTimeMilliseconds((long)milliseconds) : null;
    }
}
