using FermentWatch.Kitchen.Readings;

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
