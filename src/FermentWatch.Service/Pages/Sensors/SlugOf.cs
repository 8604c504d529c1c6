using System.Text;
using FermentWatch.Intake.Door;

namespace FermentWatch.Service.Pages.Sensors;

/// <summary>Makes the name in topics from the name people use.</summary>
internal static class SlugOf
{
    /// <summary>Lower case letters and digits, everything else a single hyphen; null where nothing is left.</summary>
    public static string? Name(string name)
    {
        var slug = new StringBuilder();
        foreach (char c in name.Trim().ToLowerInvariant())
        {
            if (char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c))
                slug.Append(c);
            else if (slug.Length > 0 && slug[^1] != '-')
                slug.Append('-');
        }
        string text = slug.ToString().TrimEnd('-');
        return SensorSlug.IsValid(text) ? text : null;
    }
}
