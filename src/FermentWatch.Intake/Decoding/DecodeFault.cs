using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Intake.Decoding;

/// <summary>Something in a payload that could not be used. It costs nothing but itself.</summary>
/// <param name="Reason">The named reason.</param>
/// <param name="Example">The payload or the field, shortened to at most 200 characters.</param>
/// <param name="Explanation">What was wrong and what would be right, in one sentence.</param>
public sealed record DecodeFault(RejectReason Reason, string Example, string Explanation);
