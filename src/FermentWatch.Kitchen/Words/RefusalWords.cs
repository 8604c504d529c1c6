using FermentWatch.Kinetics;

namespace FermentWatch.Kitchen.Words;

/// <summary>A refusal as people at a form read it: what to enter.</summary>
public static class RefusalWords
{
    private const string WouldBeRight = " would be right", SuchAs = "such as ";

    /// <summary><c>Enter how much, such as 800 g.</c> where nothing was typed; else what came, and what to enter.</summary>
    public static string ToEnter(Refusal refusal)
    {
        string right = refusal.WouldBeRight;
        int example = right.IndexOf(SuchAs, StringComparison.Ordinal);
        bool isEmpty = refusal.Came == "nothing";
        if (isEmpty && example >= 0)
            return $"Enter {refusal.Field}, {right[example..]}.";
        string enter = right.Contains(WouldBeRight, StringComparison.Ordinal)
            ? $"{(right.StartsWith("one of ", StringComparison.Ordinal) ? "Choose" : "Enter")} {Without(right)}"
            : char.ToUpperInvariant(right[0]) + right[1..];
        string stop = enter[^1] is '.' or '?' or '!' ? "" : ".";
        return isEmpty ? enter + stop : $"{refusal.Came} cannot be used. {enter}{stop}";
    }

    private static string Without(string right)
    {
        int at = right.IndexOf(WouldBeRight, StringComparison.Ordinal);
        string before = right[..at].TrimEnd(','), after = right[(at + WouldBeRight.Length)..];
        return before + after;
    }
}
