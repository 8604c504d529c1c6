using System.Text;
using FermentWatch.Kitchen.Sensors;

namespace FermentWatch.Acts.Sensors;

/// <summary>Makes the name in topics from the name people use.</summary>
internal static class SlugOf
{
    /// <summary>A table of our own: the service runs without the globalisation data that could take letters apart.</summary>
    private static readonly (string Letters, string Spelt)[] Letters =
    [
        ("äæ", "ae"), ("öøœ", "oe"), ("ü", "ue"), ("ß", "ss"), ("å", "aa"), ("þ", "th"), ("àáâãāăą", "a"), ("çćč", "c"), ("ďđð", "d"),
        ("èéêëēęě", "e"), ("ğģ", "g"), ("ìíîïīı", "i"), ("ķ", "k"), ("łľļ", "l"), ("ñńňņ", "n"), ("òóôõőō", "o"), ("řŕ", "r"), ("šśşș", "s"),
        ("ťțţ", "t"), ("ùúûůűū", "u"), ("ýÿ", "y"), ("žźż", "z"),
    ];

    private static string Spelt(char letter) =>
        Letters.FirstOrDefault(each => each.Letters.Contains(letter, StringComparison.Ordinal)).Spelt ?? letter.ToString();

    /// <summary>Lower case letters and digits, letters with marks as they are spelt without, everything else a single hyphen; null where nothing is
    /// left.</summary>
    public static string? Name(string name)
    {
        var slug = new StringBuilder();
        foreach (char c in name.Trim().ToLowerInvariant().SelectMany(Spelt))
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
