using System.Text;

namespace FermentWatch.Kitchen.Sensors;

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

    /// <summary>A slug made of any name, or null where no letter or digit of it can be kept.</summary>
    public static string? From(string name)
    {
        var slug = new StringBuilder();
        foreach (char c in name.ToLowerInvariant())
        {
            if (char.IsAsciiLetterOrDigit(c))
                slug.Append(c);
            else if (slug.Length > 0 && slug[^1] != '-')
                slug.Append('-');
            if (slug.Length == LongestCharacters)
                break;
        }
        string text = slug.ToString().TrimEnd('-');
        return text.Length > 0 ? text : null;
    }
}
