using System.Globalization;
using System.Text;

namespace FermentWatch.Kitchen.Words;

/// <summary>
/// What a stranger wrote, so that it can be put in a log, a terminal or a page and does nothing there: on one line, no escapes, no
/// invisible marks that turn the direction of what follows, and no longer than told.
/// </summary>
public static class InertText
{
    /// <summary>Longest text that is kept of a name in a log, in characters.</summary>
    public const int LongestName = 80;

    /// <summary>The text; what would do something is shown as a middle dot, and what is too long is cut with an ellipsis.</summary>
    /// <param name="text">What was written.</param>
    /// <param name="longest">Most characters of it, 1 or more.</param>
    public static string Of(string? text, int longest = LongestName)
    {
        if (string.IsNullOrEmpty(text))
            return "";
        bool cut = text.Length > longest;
        int length = cut ? longest - 1 : text.Length;
        var kept = new StringBuilder(length + 1);
        for (int i = 0; i < length; i++)
            kept.Append(DoesSomething(text[i]) ? '·' : text[i]);
        return cut ? kept.Append('…').ToString() : kept.ToString();
    }

    private static bool DoesSomething(char letter) => letter == '\uFFFD' || char.GetUnicodeCategory(letter)
        is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator
        or UnicodeCategory.Surrogate or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned;
}
