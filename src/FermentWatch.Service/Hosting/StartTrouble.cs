using Serilog.Events;

namespace FermentWatch.Service.Hosting;

/// <summary>What host and web server log, with a trace, when the service cannot start. The verb says the same in one line.</summary>
internal static class StartTrouble
{
    private static readonly string[] Sources = ["Microsoft.Extensions.Hosting.Internal.Host", "Microsoft.AspNetCore.Hosting.Diagnostics", "Microsoft.AspNetCore.Server.Kestrel"];
    private static readonly string[] Texts = ["Hosting failed to start", "Hosting failed to stop", "Unable to start Kestrel.", "Application startup exception"];

    public static bool IsSaidByTheVerb(LogEvent entry) =>
        Texts.Contains(entry.MessageTemplate.Text)
        && entry.Properties.GetValueOrDefault("SourceContext") is ScalarValue { Value: string source } && Sources.Contains(source);
}
