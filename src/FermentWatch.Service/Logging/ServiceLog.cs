using System.Globalization;
using FermentWatch.Service.Hosting;
using Serilog;
using Serilog.Configuration;
using Serilog.Core;
using Serilog.Events;
using Serilog.Formatting.Compact;

namespace FermentWatch.Service.Logging;

/// <summary>The log of the service, to standard output.</summary>
internal static class ServiceLog
{
    private const string Text = "{Timestamp:yyyy-MM-dd HH:mm:ss zzz} [{Level:u3}] {Message:lj}{NewLine}{Exception}";

    // Sections of the libraries themselves, each with what holds levels in it and the kind of level.
    private static readonly (string Section, Type Levels)[] Levels =
        [("Serilog:MinimumLevel", typeof(LogEventLevel)), ("Logging:LogLevel", typeof(LogLevel))];

    /// <summary>Writes the log by the settings; sections <c>Serilog</c> and <c>Logging</c> come on top of them.</summary>
    public static IServiceCollection AddServiceLog(this IServiceCollection services, LogOptions options, IConfiguration configuration)
    {
        var level = new LoggingLevelSwitch(options.Level);
        return services.AddSingleton(level).AddSingleton<LevelAnew>().AddSerilog(log => log
            .MinimumLevel.ControlledBy(level)
            .MinimumLevel.Override("Microsoft", LogEventLevel.Warning)
            // It has a line for each connection that is turned away.
            .MinimumLevel.Override("Microsoft.AspNetCore.Server.Kestrel.Connections", LogEventLevel.Error)
            // It warns that a key lies unencrypted; it lies in a database that is for its owner only, and at rest that is the disk's to keep.
            .MinimumLevel.Override("Microsoft.AspNetCore.DataProtection.KeyManagement.XmlKeyManager", LogEventLevel.Error)
            .ReadFrom.Configuration(configuration)
            .Filter.ByExcluding(StartTrouble.IsSaidByTheVerb)
            .WriteTo.InForm(options.Form));
    }

    /// <summary>Levels that nobody knows in the libraries' own sections, which would end the service with a trace.</summary>
    public static IEnumerable<(string Key, string Error)> UnknownLevels(IConfiguration configuration)
    {
        foreach ((string section, Type levels) in Levels)
            foreach ((string key, string? value) in configuration.GetSection(section).AsEnumerable())
                if (value is not null && !key.EndsWith(":ControlledBy", StringComparison.OrdinalIgnoreCase)
                    && !Enum.GetNames(levels).Contains(value.Trim(), StringComparer.OrdinalIgnoreCase))
                    yield return (key, $"{key} is '{value}'; one of {string.Join(", ", Enum.GetNames(levels))} belongs here.");
    }

    private static LoggerConfiguration InForm(this LoggerSinkConfiguration to, LogForm form) => form switch
    {
        LogForm.Json => to.Console(new RenderedCompactJsonFormatter()),
        LogForm.Journal => to.Console(new JournalFormatter()),
        _ => to.Console(outputTemplate: Text, formatProvider: CultureInfo.InvariantCulture),
    };
}
