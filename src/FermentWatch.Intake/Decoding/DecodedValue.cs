using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Intake.Decoding;

/// <summary>A value read from a payload, before it is known which stored sensor it belongs to.</summary>
/// <param name="Quantity">What was measured.</param>
/// <param name="Value">Finite, in the unit in which the quantity is stored.</param>
/// <param name="MeasuredAt">When, to the millisecond.</param>
/// <param name="TimeSource">How the time is known.</param>
public sealed record DecodedValue(Quantity Quantity, double Value, Instant MeasuredAt, TimeSource TimeSource);
