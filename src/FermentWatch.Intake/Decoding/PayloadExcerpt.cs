using System.Text;
using FermentWatch.Kitchen.Typed;

namespace FermentWatch.Intake.Decoding;

/// <summary>What of a payload is kept as an example for the sensors page.</summary>
public static class PayloadExcerpt
{
    /// <summary>Longest excerpt in characters.</summary>
    public const int LongestCharacters = 200;

    /// <summary>The start of the payload as text; what is no text or would disturb a page is shown as a middle dot.</summary>
    public static string Of(ReadOnlySpan<byte> payload)
    {
        // Four bytes are the most that UTF-8 needs for one character, and one more shows that something was left out.
        ReadOnlySpan<byte> start = payload[..Math.Min(payload.Length, (LongestCharacters + 1) * 4)];
        return Of(Encoding.UTF8.GetString(start));
    }

    /// <inheritdoc cref="Of(ReadOnlySpan{byte})"/>
    public static string Of(string text) => SafeText.ForLog(text, LongestCharacters);
}
