using System.Globalization;
using System.Text.RegularExpressions;
using NodaTime;

namespace FermentWatch.Export.Tests.Dashboards;

/// <summary>A query as Grafana sends it: macros and variables filled in (Grafana documentation, "InfluxDB query editor" and "Variable
/// syntax").</summary>
internal static partial class FilledQuery
{
    /// <param name="text">The query with macros.</param>
    /// <param name="span">How far back is looked, such as <c>28d</c>.</param>
    /// <param name="now">Up to when.</param>
    /// <param name="interval">The width of a step, such as <c>15m</c>.</param>
    /// <param name="chosen">The values chosen for each variable.</param>
    /// <exception cref="FormatException">A macro or variable is left that nobody fills.</exception>
    public static string Of(string text, string span, Instant now, string interval, IReadOnlyDictionary<string, string[]> chosen)
    {
        long until = now.ToUnixTimeMilliseconds(), from = (now - Ago(span)).ToUnixTimeMilliseconds();
        string filled = text
            .Replace("$timeFilter", string.Create(CultureInfo.InvariantCulture, $"time >= {from}ms and time <= {until}ms"), StringComparison.Ordinal)
            .Replace("$__interval", interval, StringComparison.Ordinal);
        foreach ((string name, string[] values) in chosen)
            filled = filled.Replace($"${{{name}:regex}}", values is [string one] ? Escaped(one) : $"({string.Join('|', values.Select(Escaped))})",
                StringComparison.Ordinal);
        return Left().Match(filled) is { Success: true } left ? throw new FormatException($"{left.Value} is filled by nobody: {text}") : filled;
    }

    private static Duration Ago(string span) => int.Parse(span[..^1], CultureInfo.InvariantCulture) * span[^1] switch
    {
        'd' => Duration.FromDays(1),
        'h' => Duration.FromHours(1),
        _ => throw new FormatException(span),
    };

    private static string Escaped(string value) => Special().Replace(value, @"\$0");

    [GeneratedRegex(@"[\\^$*+?.()|[\]{}/]")]
    private static partial Regex Special();

    // An end of a regular expression is no variable.
    [GeneratedRegex(@"\$[\w{]+|\[\[")]
    private static partial Regex Left();
}
