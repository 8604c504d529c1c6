using NodaTime;

namespace FermentWatch.Kitchen.Judging;

/// <summary>
/// How often a sensor is heard, from when its readings came, and from that how long it may be silent. Three times its longest
/// usual pause: one lost message is no news, two are. This project's own rule.
/// </summary>
public static class ReportingRhythm
{
    /// <summary>For a sensor that was not heard often enough to have a rhythm.</summary>
    public static readonly Duration SilenceOfAStranger = Duration.FromHours(2);

    private const int FewestArrivals = 6;
    private const double UsualShare = 0.9;
    private const int PausesThatAreMissed = 3;

    // What comes within a second came in one pack, or from several probes of one device.
    private static readonly Duration OneArrival = Duration.FromSeconds(1);
    private static readonly Duration ShortestSilence = Duration.FromMinutes(10);
    private static readonly Duration LongestSilence = Duration.FromDays(2);

    /// <summary>How long the sensor may be silent before that is noticed.</summary>
    /// <param name="received">When its readings came, in any order.</param>
    public static Duration SilentAfter(IEnumerable<Instant> received)
    {
        var arrivals = new List<Instant>();
        foreach (Instant at in received.Order())
            if (arrivals.Count == 0 || at - arrivals[^1] > OneArrival)
                arrivals.Add(at);
        if (arrivals.Count < FewestArrivals)
            return SilenceOfAStranger;
        Duration[] pauses = [.. arrivals.Zip(arrivals.Skip(1), (one, next) => next - one).Order()];
        Duration usual = pauses[(int)Math.Ceiling(UsualShare * pauses.Length) - 1];
        return Duration.Max(ShortestSilence, Duration.Min(LongestSilence, usual * PausesThatAreMissed));
    }
}
