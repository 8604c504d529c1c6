using Serilog.Events;

namespace FermentWatch.Service.Logging;

/// <summary>How a line of the log looks.</summary>
public enum LogForm
{
    /// <summary>Date, time, level and what happened, for people.</summary>
    Text = 1,

    /// <summary>One JSON document a line (compact log event format, CLEF), for what gathers logs.</summary>
    Json = 2,

    /// <summary>The priority that journald reads before each line (sd-daemon(3)), and no time: the journal keeps that itself.</summary>
    Journal = 3,
}

/// <summary>What the service writes of itself to its standard output.</summary>
public sealed class LogOptions
{
    /// <summary>The least level that is written. Default: Information. Read anew at SIGHUP.</summary>
    public LogEventLevel Level { get; set; } = LogEventLevel.Information;

    /// <summary>How a line looks. Default: Text.</summary>
    public LogForm Form { get; set; } = LogForm.Text;
}
