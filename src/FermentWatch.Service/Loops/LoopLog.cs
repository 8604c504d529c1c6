namespace FermentWatch.Service.Loops;

internal static partial class LoopLog
{
    [LoggerMessage(2001, LogLevel.Error, "The {Loop} loop failed and will be tried again every minute.")]
    public static partial void Failed(ILogger logger, string loop, Exception exception);

    [LoggerMessage(2002, LogLevel.Information, "The {Loop} loop runs well again.")]
    public static partial void Recovered(ILogger logger, string loop);
}
