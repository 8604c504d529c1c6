using FermentWatch.Intake.Embedded;
using FermentWatch.Kitchen.Typed;
using Microsoft.Extensions.Logging;
using MQTTnet.Diagnostics.Logger;

namespace FermentWatch.Intake;

/// <summary>
/// Passes on what the MQTT library says, at debug level only: it speaks once per packet and connection, also of what clients
/// do wrong, and what matters of it is said by ourselves.
/// </summary>
internal sealed class LibraryLogger(ILogger logger) : IMqttNetLogger
{
    private const int LongestLine = 500;

    public bool IsEnabled => logger.IsEnabled(LogLevel.Debug);

    public void Publish(MqttNetLogLevel logLevel, string source, string message, object[]? parameters, Exception? exception)
    {
        if (logLevel < MqttNetLogLevel.Info || !IsEnabled)
            return;
        string text = parameters is { Length: > 0 }
            ? string.Format(System.Globalization.CultureInfo.InvariantCulture, message, parameters)
            : message;
        BrokerLog.Library(logger, source, SafeText.ForLog(text, LongestLine), exception);
    }
}
