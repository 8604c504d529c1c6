using FermentWatch.Kitchen.Health;
using Microsoft.Extensions.Logging;
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

/// <summary>How one try to be connected ended.</summary>
/// <param name="Problem">Why, in one sentence.</param>
/// <param name="Held">Whether there was a connection that lasted for a while.</param>
internal sealed record LinkAttempt(string Problem, bool Held);

/// <summary>What the link says in the log: changes of state, not every try. The numbers are stable.</summary>
internal static partial class LinkLog
{
    [LoggerMessage(2101, LogLevel.Information, "Connected to the outside broker {Host} port {Port}; session kept: {SessionPresent}")]
    public static partial void Connected(ILogger logger, string host, int port, bool sessionPresent);

    [LoggerMessage(2102, LogLevel.Warning, "No connection to the outside broker {Host} port {Port}: {Problem} Tried again until there is")]
    public static partial void Lost(ILogger logger, string host, int port, string problem);

    [LoggerMessage(2103, LogLevel.Error, "A message of the outside broker could not be written down; it is left there and comes again")]
    public static partial void NotStored(ILogger logger, Exception exception);

    [LoggerMessage(2104, LogLevel.Warning, "The outside broker refuses to send us {Filter}: {Answer}")]
    public static partial void SubscriptionRefused(ILogger logger, string filter, string answer);
}
