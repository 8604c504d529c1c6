namespace FermentWatch.Intake.Door;

/// <summary>The shape of a sensor's name in topics: lower case letters, digits and hyphens, 1 to 64 of them, a letter or digit first.</summary>
public static class SensorSlug
{
    /// <summary>Most characters of a slug.</summary>
    public const int LongestCharacters = 64;

    public static bool IsValid(ReadOnlySpan<char> text)
    {
        if (text.Length is 0 or > LongestCharacters || text[0] == '-')
            return false;
        foreach (char c in text)
            if (!char.IsAsciiLetterLower(c) && !char.IsAsciiDigit(c) && c != '-')
                return false;
        return true;
    }
}
