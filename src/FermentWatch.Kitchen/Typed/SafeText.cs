using System.Globalization;
using System.Text;
using FermentWatch.Kinetics;

namespace FermentWatch.Kitchen.Typed;

/// <summary>What strangers write, made inert: one rule for names, one for notes, one for the log.</summary>
public static class SafeText
{
    /// <summary>Letters of the longest name of a person, place, jar or sensor.</summary>
    public const int LongestName = 60;

    /// <summary>Letters of the longest note.</summary>
    public const int LongestNote = 2000;

    private const int LongestInLog = 120;

    /// <summary>Whether a text has a sign that shows nothing itself and changes what stands beside it: NUL, escapes, line ends, marks of direction,
    /// halves of a pair.</summary>
    /// <param name="text">The text.</param>
    /// <param name="linesMayBreak">Whether line breaks and tabs belong in it.</param>
    public static bool HasHiddenSigns(string text, bool linesMayBreak = false)
    {
        foreach (Rune rune in text.EnumerateRunes())
            if (IsHidden(rune) && !(linesMayBreak && rune.Value is '\n' or '\r' or '\t'))
                return true;
        return false;
    }

    /// <summary>A name as it is kept: without blanks around it; refused where it is empty, too long, or has hidden signs.</summary>
    public static string ReadName(this FieldReader reader, string field, string? typed, int longest = LongestName)
    {
        string name = (typed ?? "").Trim();
        if (WrongName(field, name, longest) is { } refusal)
            reader.Refusals.Add(refusal);
        return name;
    }

    /// <summary>What is wrong with a name; null where nothing is.</summary>
    public static Refusal? WrongName(string field, string name, int longest = LongestName) =>
        name.Length == 0 || name.Length > longest
            ? new Refusal(field, name.Length == 0 ? "nothing" : $"{name.Length} letters", $"a name of 1 to {longest} letters would be right")
            : HasHiddenSigns(name)
                ? new Refusal(field, "a name with a line break, a direction mark or another sign that is not seen",
                    "a name of letters, digits and signs that are seen would be right")
                : null;

    /// <summary>What is wrong with a note; null where nothing is.</summary>
    public static Refusal? WrongNote(string field, string? note) =>
        note is { Length: > LongestNote } ? new Refusal(field, $"{note.Length} letters", $"at most {LongestNote} would be right")
        : HasHiddenSigns(note ?? "", linesMayBreak: true)
            ? new Refusal(field, "a note with signs that are not seen", "letters, digits, signs and line breaks would be right")
        : null;

    /// <summary>A note as it is kept: without blanks around it; refused where it is too long or has hidden signs besides line breaks.</summary>
    public static string ReadNote(this FieldReader reader, string field, string? typed)
    {
        string note = (typed ?? "").Trim();
        if (WrongNote(field, note) is { } refusal)
            reader.Refusals.Add(refusal);
        return note;
    }

    /// <summary>A text as it may stand in a line of the log: hidden signs as their code, and no longer than told.</summary>
    /// <param name="text">What was written.</param>
    /// <param name="longest">Most letters of the answer, 1 or more; what is cut ends in an ellipsis.</param>
    public static string ForLog(string? text, int longest = LongestInLog)
    {
        var shown = new StringBuilder();
        foreach (Rune rune in (text ?? "").EnumerateRunes())
        {
            string sign = IsHidden(rune) ? string.Create(CultureInfo.InvariantCulture, $"\\u{rune.Value:x4}") : rune.ToString();
            if (shown.Length + sign.Length > longest)
            {
                while (shown.Length > 0 && (shown.Length >= longest || char.IsHighSurrogate(shown[^1])))
                    shown.Length--;
                return shown.Append('…').ToString();
            }
            shown.Append(sign);
        }
        return shown.ToString();
    }

    /// <summary>Control, format (direction marks among them), line and paragraph ends, private and unpaired; what joins emoji and letters is
    /// left.</summary>
    private static bool IsHidden(Rune rune) => rune.Value is not (0x200D or 0x200C) && Rune.GetUnicodeCategory(rune) is
        UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator
        or UnicodeCategory.PrivateUse or UnicodeCategory.Surrogate || rune == Rune.ReplacementChar;
}
