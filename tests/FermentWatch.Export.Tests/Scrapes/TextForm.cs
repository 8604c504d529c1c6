using System.Globalization;
using System.Text.RegularExpressions;

namespace FermentWatch.Export.Tests.Scrapes;

/// <summary>One metric of a scrape, with its samples in the order they stood.</summary>
internal sealed record Family(string Name, string Kind, string Help)
{
    public List<Sample> Samples { get; } = [];
}

/// <summary>One line of a scrape.</summary>
/// <param name="Name">With the ending of a histogram's part.</param>
/// <param name="Labels">As they stood, without the braces.</param>
/// <param name="Value">The number.</param>
internal sealed record Sample(string Name, string Labels, double Value);

/// <summary>
/// Reads a scrape by the rules of the text form, version 0.0.4 (Prometheus documentation, "Exposition formats"), and throws at the first
/// line that is none: names, TYPE and HELP once and before all samples, samples of a metric together, no series twice, a line feed at the end.
/// </summary>
internal static partial class TextForm
{
    private static readonly string[] Kinds = ["counter", "gauge", "histogram"];

    public static IReadOnlyList<Family> Read(string text)
    {
        if (!text.EndsWith('\n'))
            throw new FormatException("The last line does not end.");
        var families = new List<Family>();
        string[] lines = text[..^1].Split('\n');
        for (int at = 0; at < lines.Length;)
        {
            Family family = Head(lines, ref at);
            if (families.Any(other => other.Name == family.Name))
                throw new FormatException($"{family.Name} stands there twice.");
            families.Add(family);
            for (; at < lines.Length && lines[at][0] != '#'; at++)
                family.Samples.Add(SampleOf(lines[at], family));
            if (family.Samples.Count == 0)
                throw new FormatException($"{family.Name} has no sample.");
            if (family.Samples.GroupBy(sample => (sample.Name, sample.Labels)).FirstOrDefault(same => same.Count() > 1) is { } twice)
                throw new FormatException($"{twice.Key} stands there twice.");
        }
        return families;
    }

    private static Family Head(string[] lines, ref int at)
    {
        Match kind = Type().Match(lines[at]), help = at + 1 < lines.Length ? Help().Match(lines[at + 1]) : Match.Empty;
        if (!kind.Success || !help.Success || kind.Groups[1].Value != help.Groups[1].Value || !Kinds.Contains(kind.Groups[2].Value))
            throw new FormatException($"'{lines[at]}' does not begin a metric.");
        at += 2;
        return new Family(kind.Groups[1].Value, kind.Groups[2].Value, help.Groups[2].Value);
    }

    private static Sample SampleOf(string line, Family family)
    {
        Match match = Line().Match(line);
        string ending = match.Success && match.Groups["name"].Value.StartsWith(family.Name, StringComparison.Ordinal)
            ? match.Groups["name"].Value[family.Name.Length..] : "none";
        bool belongs = family.Kind == "histogram" ? ending is "_bucket" or "_sum" or "_count" : ending.Length == 0;
        if (!belongs)
            throw new FormatException($"'{line}' is no sample of {family.Name}.");
        return new Sample(match.Groups["name"].Value, match.Groups["labels"].Value, Number(match.Groups["value"].Value));
    }

    private static double Number(string text) => text switch
    {
        "+Inf" => double.PositiveInfinity,
        "-Inf" => double.NegativeInfinity,
        _ => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture),
    };

    [GeneratedRegex(@"^# TYPE ([a-zA-Z_:][a-zA-Z0-9_:]*) ([a-z]+)$")]
    private static partial Regex Type();

    [GeneratedRegex(@"^# HELP ([a-zA-Z_:][a-zA-Z0-9_:]*) (\S.*)$")]
    private static partial Regex Help();

    [GeneratedRegex("""
        ^(?<name>[a-zA-Z_:][a-zA-Z0-9_:]*)(\{(?<labels>([a-zA-Z_][a-zA-Z0-9_]*="([^"\\]|\\["\\n])*"(,(?!\})|(?=\})))*)\})? (?<value>\S+)$
        """)]
    private static partial Regex Line();
}
