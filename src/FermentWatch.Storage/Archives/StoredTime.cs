using System.Globalization;
using System.Text;

namespace FermentWatch.Storage.Archives;

/// <summary>Instants as text: ISO 8601 in UTC to the millisecond, written and read millions of times.</summary>
internal static class StoredTime
{
    private const string Form = "yyyy-MM-dd'T'HH:mm:ss.fff'Z'";

    private const int Longest = 32;

    private static readonly long FirstMs = -62_135_596_800_000, LastMs = 253_402_300_799_999;

    /// <summary>The text of milliseconds since the Unix epoch; a number that no calendar can name stays a number.</summary>
    internal static string Text(long milliseconds) => milliseconds >= FirstMs && milliseconds <= LastMs
        ? DateTime.UnixEpoch.AddMilliseconds(milliseconds).ToString(Form, CultureInfo.InvariantCulture)
        : milliseconds.ToString(CultureInfo.InvariantCulture);

    /// <summary>The milliseconds that a text in UTF-8 means.</summary>
    internal static bool TryRead(ReadOnlySpan<byte> text, out long milliseconds)
    {
        Span<char> characters = stackalloc char[Longest];
        milliseconds = 0;
        return text.Length <= Longest && TryRead(characters[..Encoding.UTF8.GetChars(text, characters)], out milliseconds);
    }

    /// <summary>The milliseconds that a text means.</summary>
    internal static bool TryRead(ReadOnlySpan<char> text, out long milliseconds)
    {
        if (DateTime.TryParseExact(text, Form, CultureInfo.InvariantCulture,
            DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out DateTime time))
        {
            milliseconds = (time.Ticks - DateTime.UnixEpoch.Ticks) / TimeSpan.TicksPerMillisecond;
            return true;
        }
        return long.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out milliseconds);
    }
}
