using Microsoft.Extensions.Logging;

namespace FermentWatch.Intake.Outside;

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
