using System.Globalization;
using System.Text.RegularExpressions;

namespace FermentWatch.Kitchen.Typed;

/// <summary>Numbers of jars as people write them in a row: <c>3, 5 to 8</c> or <c>3 5-8</c>.</summary>
public static partial class JarNumbers
{
    /// <summary>So many of one run at most: a slip of the thumb is no order for a thousand.</summary>
    private const int LongestRun = 500;

    /// <summary>Longer texts are no row of numbers.</summary>
    private const int LongestText = 400;

    /// <summary>The numbers, each once, in order; null where something else stands between them.</summary>
    public static IReadOnlyList<int>? Read(string? typed)
    {
        string text = typed ?? "";
        if (text.Length > LongestText || Whole().Match(text) is not { Success: true } match)
            return null;
        var runs = match.Groups["run"].Captures.Select(run =>
            Numbers().Matches(run.Value).Select(number => int.Parse(number.Value, CultureInfo.InvariantCulture)).ToList()).ToList();
        if (runs.Exists(run => run[^1] < run[0] || run[^1] - run[0] >= LongestRun))
            return null;
        return [.. runs.SelectMany(run => Enumerable.Range(run[0], run[^1] - run[0] + 1)).Distinct().Order()];
    }

    [GeneratedRegex(@"^[\s,;]*(?<run>[0-9]{1,6}(\s*(-|–|to)\s*[0-9]{1,6})?)([\s,;]+(?<run>[0-9]{1,6}(\s*(-|–|to)\s*[0-9]{1,6})?))*[\s,;]*$",
        RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Whole();

    [GeneratedRegex(@"[0-9]+")]
    private static partial Regex Numbers();
}
