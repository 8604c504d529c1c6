using static FermentWatch.Kinetics.Sentence;

namespace FermentWatch.Kinetics;

/// <summary>
/// Why an input was not taken: which field, what came, and what would be right. Expected trouble, therefore a value
/// that pages, commands and API answers can show; every refusal of one input is returned at once.
/// </summary>
/// <param name="Field">The field in plain words, for example <c>salt</c>.</param>
/// <param name="Came">What was given, with its unit; <c>nothing</c> where it was left out.</param>
/// <param name="WouldBeRight">What would be taken instead, with its unit and range; says so by the words <c>would be right</c>, or what to
/// do.</param>
public sealed record Refusal(string Field, string Came, string WouldBeRight)
{
    private const string RightWords = " would be right", SuchAs = "such as ";

    /// <summary>
    /// What to enter, as people read it: <c>Enter how much, such as 800 g.</c> where nothing was given; else what came, and what to
    /// enter in its place.
    /// </summary>
    public string ToEnter()
    {
        bool isEmpty = Came == "nothing";
        string enter = isEmpty && Example() is { } example ? $"Enter {Field}, {example}" : Asked();
        string stop = enter[^1] is '.' or '?' or '!' ? "" : ".";
        return isEmpty ? enter + stop : $"{Came} cannot be used. {enter}{stop}";
    }

    /// <summary>One line: field, what came, what to enter.</summary>
    public override string ToString() => $"{Field}: {ToEnter()}";

    private string? Example()
    {
        (string before, string after) = Parts();
        string all = before + after;
        int at = all.IndexOf(SuchAs, StringComparison.Ordinal);
        return at < 0 ? null : all[at..];
    }

    private string Asked()
    {
        (string before, string after) = Parts();
        if (before.Length == WouldBeRight.Length)
            return Capital(before);
        int because = before.LastIndexOf(": ", StringComparison.Ordinal);
        if (because >= 0)
            return $"{Capital(before[..because])}: enter {before[(because + 2)..]}{after}";
        return $"{(before.StartsWith("one of ", StringComparison.Ordinal) ? "Choose" : "Enter")} {before}{after}";
    }

    /// <summary>What stands before and after the words <c>would be right</c>; all of it before, where they are missing.</summary>
    private (string Before, string After) Parts()
    {
        int at = WouldBeRight.IndexOf(RightWords, StringComparison.Ordinal);
        return at < 0 ? (WouldBeRight, "") : (WouldBeRight[..at].TrimEnd(','), WouldBeRight[(at + RightWords.Length)..]);
    }
}

/// <summary>Words at the beginning of a sentence.</summary>
public static class Sentence
{
    /// <summary>The words with their first letter large; at least one letter.</summary>
    public static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
