using FermentWatch.Kitchen.Forwarding;
using Microsoft.Extensions.Logging;

namespace FermentWatch.Export.Forwarding;

internal static partial class ForwarderLog
{
    [LoggerMessage(5001, LogLevel.Warning, "Series are not passed on: {Trouble}. They wait in our log, and it is tried again at growing intervals.")]
    public static partial void Unreachable(ILogger logger, string trouble);

    [LoggerMessage(5002, LogLevel.Information, "Series are passed on again.")]
    public static partial void Reached(ILogger logger);

    [LoggerMessage(5003, LogLevel.Warning,
        "The series {Series} is held back, because its newest point is refused too: {Trouble}. It waits in our log.")]
    public static partial void Held(ILogger logger, SeriesKind series, string trouble);

    [LoggerMessage(5004, LogLevel.Information, "The series {Series} is passed on again.")]
    public static partial void Released(ILogger logger, SeriesKind series);

    [LoggerMessage(5005, LogLevel.Warning,
        "A point of the series {Series} was left out, reason {Reason}: '{Example}'. {Explanation}. Further ones are counted only.")]
    public static partial void LeftOut(ILogger logger, SeriesKind series, NotForwardedReason reason, string example, string explanation);
}
