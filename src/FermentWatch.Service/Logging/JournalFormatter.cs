using System.Globalization;
using Serilog.Events;
using Serilog.Formatting;
using Serilog.Formatting.Display;

namespace FermentWatch.Service.Logging;

/// <summary>
/// Lines as journald takes them from standard output: each begins with its priority in angle brackets (sd-daemon(3), syslog's levels 0 to 7),
/// those of a trace too, which would else be of the usual priority.
/// </summary>
internal sealed class JournalFormatter : ITextFormatter
{
    private readonly MessageTemplateTextFormatter _text = new("{Message:lj}{NewLine}{Exception}", CultureInfo.InvariantCulture);

    public void Format(LogEvent logEvent, TextWriter output)
    {
        using var whole = new StringWriter(CultureInfo.InvariantCulture);
        _text.Format(logEvent, whole);
        foreach (string line in whole.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries))
            output.Write(string.Create(CultureInfo.InvariantCulture, $"<{Priority(logEvent.Level)}>{line.TrimEnd('\r')}\n"));
    }

    private static int Priority(LogEventLevel level) => level switch
    {
        LogEventLevel.Fatal => 2,
        LogEventLevel.Error => 3,
        LogEventLevel.Warning => 4,
        LogEventLevel.Information => 6,
        _ => 7,
    };
}
