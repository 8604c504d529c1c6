using System.Text.RegularExpressions;

namespace FermentWatch.Kitchen.Tests.Golden;

/// <summary>A message as it is read aloud.</summary>
internal static partial class Aloud
{
    /// <summary>A tired parent reads this many words a second aloud (common practice, no source).</summary>
    private const double WordsPerSecond = 2.75;

    private const double LongestSeconds = 15;

    /// <summary>Fails where a message takes 15 seconds or more, or calls something safe.</summary>
    public static void Hold(string title, string body)
    {
        int words = $"{title} {body}".Split([' ', '\n', ':', ',', '/'], StringSplitOptions.RemoveEmptyEntries).Length;
        Assert.True(words / WordsPerSecond < LongestSeconds, $"{words} words: {title}\n{body}");
        Assert.DoesNotMatch(Safety(), title + body);
    }

    [GeneratedRegex(@"\b(un)?safe(ly|ty)?\b", RegexOptions.IgnoreCase)]
    private static partial Regex Safety();
}
