using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Storage.Readings;

/// <summary>How often readings of one quantity came under a key that another value had. The first stays.</summary>
/// <param name="Quantity">The quantity; its unit is that of the values.</param>
/// <param name="Count">How often.</param>
/// <param name="MeasuredAt">The key of the last case.</param>
/// <param name="Kept">The value that was there and stays.</param>
/// <param name="Refused">The value that came and was not stored.</param>
/// <param name="ReceivedAt">When it came.</param>
public sealed record ConflictCount(
    Quantity Quantity, long Count, Instant MeasuredAt, double Kept, double Refused, Instant ReceivedAt);
