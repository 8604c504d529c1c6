using System.Text;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Typed;
using NodaTime;

namespace FermentWatch.Intake.Decoding;

/// <summary>All that came out of one payload.</summary>
public sealed record Decoded(IReadOnlyList<DecodedValue> Values, IReadOnlyList<DecodeFault> Faults)
{
    /// <summary>A payload that gave one value and no fault.</summary>
    public static Decoded Of(DecodedValue value) => new([value], []);

    /// <summary>A payload that as a whole could not be used.</summary>
    public static Decoded Refused(RejectReason reason, ReadOnlySpan<byte> payload, string explanation) =>
        new([], [new DecodeFault(reason, PayloadExcerpt.Of(payload), explanation)]);
}

/// <summary>A value read from a payload, before it is known which stored sensor it belongs to.</summary>
/// <param name="Quantity">What was measured.</param>
/// <param name="Value">Finite, in the unit in which the quantity is stored.</param>
/// <param name="MeasuredAt">When, to the millisecond.</param>
/// <param name="TimeSource">How the time is known.</param>
public sealed record DecodedValue(Quantity Quantity, double Value, Instant MeasuredAt, TimeSource TimeSource);

/// <summary>Something in a payload that could not be used. It costs nothing but itself.</summary>
/// <param name="Reason">The named reason.</param>
/// <param name="Example">The payload or the field, shortened to at most 200 characters.</param>
/// <param name="Explanation">What was wrong and what would be right, in one sentence.</param>
public sealed record DecodeFault(RejectReason Reason, string Example, string Explanation);

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
