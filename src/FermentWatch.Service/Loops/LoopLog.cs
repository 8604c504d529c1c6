namespace FermentWatch.Service.Loops;

internal static partial class LoopLog
{
    [LoggerMessage(3001, LogLevel.Error, "The {Loop} loop failed and will be tried again every minute.")]
    public static partial void Failed(ILogger logger, string loop, Exception exception);

    [LoggerMessage(3002, LogLevel.Information, "The {Loop} loop runs well again.")]
    public static partial void Recovered(ILogger logger, string loop);

    [LoggerMessage(3003, LogLevel.Warning, "{Count} readings could not be judged since the start and are set aside; the last is {Quantity} of the sensor with key {SensorKey}, measured {MeasuredAt}: {Reason}")]
    public static partial void SetAside(ILogger logger, long count, int sensorKey, Kitchen.Readings.Quantity quantity, NodaTime.Instant measuredAt, string reason);
}
