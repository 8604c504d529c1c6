using NodaTime;

namespace FermentWatch.Kitchen.Readings;

/// <summary>Something that came in and could not be used.</summary>
/// <param name="Topic">The topic it came on.</param>
/// <param name="Reason">Why it could not be used.</param>
/// <param name="Example">The payload or field, shortened to at most 200 characters, for the sensors page.</param>
/// <param name="ReceivedAt">When it came.</param>
/// <param name="SensorKey">The sensor, where it is known.</param>
/// <param name="Explanation">What was wrong and what would be right, in one sentence.</param>
public sealed record Reject(
    string Topic, RejectReason Reason, string Example, Instant ReceivedAt, int? SensorKey, string Explanation);
