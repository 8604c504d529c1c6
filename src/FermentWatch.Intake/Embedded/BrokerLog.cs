using Microsoft.Extensions.Logging;

namespace FermentWatch.Intake.Embedded;

/// <summary>What the broker says in the log. The numbers are stable: alarms may be built on them.</summary>
internal static partial class BrokerLog
{
    /// <summary>After how long what was said "not again for a while" is said again.</summary>
    public static readonly TimeSpan SayAgainAfter = TimeSpan.FromMinutes(10);

    [LoggerMessage(2001, LogLevel.Information, "The MQTT broker listens on {Address} port {Port}")]
    public static partial void Listening(ILogger logger, string address, int port);

    [LoggerMessage(2015, LogLevel.Information, "The MQTT broker listens on {Address} port {Port} with TLS")]
    public static partial void ListeningSecured(ILogger logger, string address, int port);

    [LoggerMessage(2002, LogLevel.Information, "The MQTT broker has stopped")]
    public static partial void Stopped(ILogger logger);

    [LoggerMessage(2003, LogLevel.Warning, "MQTT client {ClientId} (user {User}, from {Address}) was refused: {Reason}. Not said again for a while")]
    public static partial void Refused(ILogger logger, string clientId, string user, string address, RefusalReason reason);

    [LoggerMessage(2004, LogLevel.Warning, "MQTT client {ClientId} may not use topic {Topic}: {Reason}. Not said again for a while")]
    public static partial void TopicRefused(ILogger logger, string clientId, string topic, RefusalReason reason);

    [LoggerMessage(2005, LogLevel.Error, "Readings cannot be written down: clients are disconnected and will send again")]
    public static partial void LogBroken(ILogger logger, Exception exception);

    [LoggerMessage(2006, LogLevel.Information, "Readings are written down again")]
    public static partial void LogMended(ILogger logger);

    [LoggerMessage(2007, LogLevel.Information, "MQTT client {ClientId} was disconnected: its credential was withdrawn")]
    public static partial void Withdrawn(ILogger logger, string clientId);

    [LoggerMessage(2008, LogLevel.Warning, "The records could not be asked whether connected MQTT clients may stay; asked again soon")]
    public static partial void CheckFailed(ILogger logger, Exception exception);

    [LoggerMessage(2009, LogLevel.Warning, "MQTT client {ClientId} reads too slowly; messages for it were dropped. Not said again for a while")]
    public static partial void SlowSubscriber(ILogger logger, string clientId);

    [LoggerMessage(2010, LogLevel.Error, "The records could not be asked whether an MQTT client may connect")]
    public static partial void RecordsUnavailable(ILogger logger, Exception exception);

    [LoggerMessage(2012, LogLevel.Warning, "A connection from {Address} was cut: {Reason}. Not said again for a while")]
    public static partial void ConnectionCut(ILogger logger, string address, RefusalReason reason);

    [LoggerMessage(2013, LogLevel.Error, "Connections cannot be accepted: {Problem}. Tried again soon")]
    public static partial void AcceptFailed(ILogger logger, string problem);

    [LoggerMessage(2014, LogLevel.Warning,
        "MQTT client {ClientId} (user {User}) sends more than {Limit} messages a second and is slowed down. Not said again for a while")]
    public static partial void TooFast(ILogger logger, string clientId, string user, int limit);

    [LoggerMessage(2011, LogLevel.Debug, "{Source}: {Text}")]
    public static partial void Library(ILogger logger, string source, string text, Exception? exception);
}
