using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Intake.Decoding;

/// <summary>Reads a payload that is one number and nothing else. It carries no time: the time is that of arrival.</summary>
public static class BareNumberDecoder
{
    /// <summary>Decodes a payload.</summary>
    /// <param name="payload">The payload.</param>
    /// <param name="unit">The unit in which the number is.</param>
    /// <param name="receivedAt">When it came in.</param>
    public static Decoded Decode(ReadOnlySpan<byte> payload, MeasureUnit unit, Instant receivedAt) =>
        StrictNumber.Read(payload, out double number) switch
        {
            NumberShape.Finite => OfNumber(number, payload, unit, receivedAt),
            NumberShape.NoValue => Decoded.Refused(
                RejectReason.NoValue, payload, $"The device sent no value; a number in {unit} belongs here."),
            _ => Decoded.Refused(
                RejectReason.NotParseable, payload, $"Not a number; only a number in {unit} with a decimal point belongs here, like 21.5."),
        };

    private static Decoded OfNumber(double number, ReadOnlySpan<byte> payload, MeasureUnit unit, Instant receivedAt)
    {
        double value = unit.ToStored(number);
        return double.IsFinite(value)
            ? Decoded.Of(new DecodedValue(unit.Quantity, value, receivedAt, TimeSource.Arrival))
            : Decoded.Refused(RejectReason.NoValue, payload, $"Too large to be a number in {unit}.");
    }
}
