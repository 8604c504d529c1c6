using FermentWatch.Intake.Decoding;
using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Intake.Offers;

/// <summary>A value in a payload that looks like a temperature or a pH.</summary>
/// <param name="Place">JSON Pointer to it; null for a bare number.</param>
/// <param name="Quantity">What it seems to measure.</param>
/// <param name="Unit">The unit it seems to be in.</param>
/// <param name="Value">The value in that unit.</param>
public sealed record Likeness(string? Place, Quantity Quantity, MeasureUnit Unit, double Value);
