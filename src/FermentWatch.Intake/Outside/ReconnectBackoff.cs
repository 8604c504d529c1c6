using FermentWatch.Kitchen.Health;
using NodaTime;

namespace FermentWatch.Intake.Outside;

/// <summary>
/// How long to wait before the next try to connect: doubling from 1 to 30 seconds, and a share of it left to chance, so that many
/// clients of a broker that comes back do not all come at once. It grows only with a broker that is there and does not keep us;
/// while none is there we look for it, which is no try, and are back within 5 seconds of its return.
/// </summary>
public static class ReconnectBackoff
{
    private static readonly Backoff Steps = new(Duration.FromSeconds(1), Duration.FromSeconds(30));

    /// <summary>The wait before a try.</summary>
    /// <param name="failures">Failures in a row since the broker was last absent, at least 1.</param>
    /// <param name="chance">From 0 to below 1; the wait is between half and all of the step.</param>
    public static TimeSpan Wait(int failures, double chance)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(failures, 1);
        return Duration.Max(Steps.First, Steps.After(failures) * ((1 + chance) / 2)).ToTimeSpan();
    }

    /// <summary>The wait before looking again whether somebody is there: 1 to 2 seconds, and looking takes 2 at most.</summary>
    /// <param name="chance">From 0 to below 1.</param>
    public static TimeSpan LookAgain(double chance) => TimeSpan.FromSeconds(1 + chance);
}
