using System.Globalization;
using System.Net.Sockets;
using FermentWatch.Service.Settings;
using Microsoft.AspNetCore.Connections;
using Serilog.Events;

namespace FermentWatch.Service.Hosting;

/// <summary>What host and web server log, with a trace, when the service cannot start. The verb says the same in one line.</summary>
internal static class StartTrouble
{
    private static readonly string[] Sources = ["Microsoft.Extensions.Hosting.Internal.Host", "Microsoft.AspNetCore.Hosting.Diagnostics",
        "Microsoft.AspNetCore.Server.Kestrel"];
    private static readonly string[] Texts = ["Hosting failed to start", "Hosting failed to stop", "Unable to start Kestrel.",
        "Application startup exception"];

    public static bool IsSaidByTheVerb(LogEvent entry) =>
        Texts.Contains(entry.MessageTemplate.Text)
        && entry.Properties.GetValueOrDefault("SourceContext") is ScalarValue { Value: string source } && Sources.Contains(source);
}

/// <summary>A port that another program has, in one line with what to change.</summary>
internal static class TakenPort
{
    /// <summary>The line; null where the trouble is another.</summary>
    /// <param name="trouble">Why the service did not start.</param>
    /// <param name="settings">The ports that were wanted.</param>
    /// <param name="another">How another port for the pages is given, but for its number; for the broker's it is always the setting.</param>
    public static string? Words(Exception trouble, ServiceSettings settings, string another = "FERMENTWATCH__WEB__PORT=") => trouble switch
    {
        IOException { InnerException: AddressInUseException } => Line(settings.Web.Port, "the pages", another),
        SocketException { SocketErrorCode: SocketError.AddressAlreadyInUse } => Line(settings.Mqtt.Port, "the broker", "FERMENTWATCH__MQTT__PORT="),
        _ => null,
    };

    private static string Line(int port, string of, string another) =>
        string.Create(CultureInfo.InvariantCulture,
            $"Port {port} of {of} is taken: stop what has it, or take another, such as {another}{Next(port)}.");

    private static int Next(int port) => port < ushort.MaxValue ? port + 1 : port - 1;
}
