using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Service.Api.Answers;

/// <summary>The last reading of a quantity.</summary>
/// <param name="Quantity">What was measured; the unit follows from it: degrees Celsius, pH, millivolts, per cent relative humidity.</param>
/// <param name="ValueInUnitOfQuantity">The value.</param>
/// <param name="MeasuredAt">When.</param>
/// <param name="Verdict">What it is worth.</param>
public sealed record LastReadingAnswer(Quantity Quantity, double ValueInUnitOfQuantity, Instant MeasuredAt, Verdict Verdict);
