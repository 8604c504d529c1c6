using System.Globalization;
using System.Text;

namespace FermentWatch.Intake.Decoding;

/// <summary>Numbers as text: an optional sign, digits with an optional decimal point, an optional exponent; nothing else.</summary>
public static class StrictNumber
{
    private const int LongestCharacters = 40;

    private const NumberStyles Shape =
        NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;

    private static readonly string[] _noNumber =
        ["nan", "-nan", "+nan", "inf", "-inf", "+inf", "infinity", "-infinity", "+infinity", "null", "none", "unknown", "unavailable"];

    /// <summary>Reads a number, whatever the culture; spaces, line ends and the NUL that C strings leave behind are ignored at the ends.</summary>
    public static NumberShape Read(ReadOnlySpan<byte> text, out double value)
    {
        value = 0;
        text = Trim(text);
        if (text.IsEmpty)
            return NumberShape.NoValue;
        if (text.Length > LongestCharacters || !Ascii.IsValid(text))
            return NumberShape.NotANumber;

        Span<char> characters = stackalloc char[text.Length];
        Encoding.ASCII.GetChars(text, characters);
        if (IsNoNumber(characters))
            return NumberShape.NoValue;
        // The framework also reads its own words for infinity and NaN: only what begins like a number is offered to it.
        if (!char.IsAsciiDigit(characters[^1]) && characters[^1] != '.')
            return NumberShape.NotANumber;
        if (!double.TryParse(characters, Shape, CultureInfo.InvariantCulture, out value))
            return NumberShape.NotANumber;
        return double.IsFinite(value) ? NumberShape.Finite : NumberShape.NoValue;
    }

    /// <summary>Whether the text is one of the words by which devices say that they have no value.</summary>
    public static bool IsNoNumber(ReadOnlySpan<char> text)
    {
        foreach (string word in _noNumber)
            if (text.Equals(word, StringComparison.OrdinalIgnoreCase))
                return true;
        return false;
    }

    private static ReadOnlySpan<byte> Trim(ReadOnlySpan<byte> text) => text.Trim(" \t\r\n\0"u8);
}

/// <summary>What a text that should be a number turned out to be.</summary>
public enum NumberShape
{
    /// <summary>A finite number.</summary>
    Finite = 1,

    /// <summary>Empty, null, NaN or infinity: the device says that it has no value.</summary>
    NoValue = 2,

    /// <summary>Anything else.</summary>
    NotANumber = 3,
}
