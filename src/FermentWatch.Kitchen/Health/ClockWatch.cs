using System.Globalization;
using NodaTime;

namespace FermentWatch.Kitchen.Health;

/// <summary>
/// Notices when the machine's clock is far ahead of what it was: after a long time switched off that is right, after a wrong setting it
/// is not, and only a person knows which. Nothing waits for the answer: what a wrong clock wrote is taken back once it is mended.
/// </summary>
public sealed class ClockWatch
{
    private static readonly Duration Leap = Duration.FromDays(1);

    /// <summary>Who has run for this long without anybody mending the clock has the right one.</summary>
    private static readonly Duration AskedFor = Duration.FromDays(2);

    private Instant? _last;
    private (Instant Before, Instant After)? _leap;

    /// <summary>What a person is asked; null when the clock gives no reason.</summary>
    /// <param name="zone">The household's zone.</param>
    public string? Question(DateTimeZone zone) => _leap is not { } leap ? null
        : $"This machine's clock says {Day(_last ?? leap.After, zone)}; the last sign of life before was on {Day(leap.Before, zone)}. If it was "
            + "switched off so long, "
            + "nothing is to be done. If the clock is wrong, set it right: what was written under the wrong date is then taken back.";

    /// <summary>Takes in what time it is.</summary>
    /// <param name="now">The clock.</param>
    /// <param name="lastSign">The newest that was written before this process began; asked for once.</param>
    public async Task LookAsync(Instant now, Func<Task<Instant?>> lastSign)
    {
        Instant? before = _last ?? await lastSign();
        if (before is { } sign && now - sign > Leap)
            _leap = (sign, now);
        else if (_leap is { } leap && (now < leap.After - Leap || now - leap.After > AskedFor))
            _leap = null;
        _last = now;
    }

    /// <summary>An adult has said that the clock is right.</summary>
    public void Confirm() => _leap = null;

    private static string Day(Instant instant, DateTimeZone zone) =>
        instant.InZone(zone).ToString("d MMMM uuuu, HH:mm", CultureInfo.InvariantCulture);
}
