using NodaTime;

namespace FermentWatch.Kitchen.Readings;

/// <summary>What one sensor measured over a stretch of time, from &lt;= start &lt; until.</summary>
/// <param name="SensorKey">Key of the sensor.</param>
/// <param name="From">The first start.</param>
/// <param name="Until">The end, itself left out.</param>
public readonly record struct SensorSpan(int SensorKey, Instant From, Instant Until);

/// <summary>Tells of the means of a span, without reading them, whether they are the same as before: equal stamps, equal means.</summary>
/// <param name="Count">How many there are.</param>
/// <param name="Revision">The revision at which the last of them to change did.</param>
/// <param name="Newest">Start of the newest; null where there is none.</param>
public readonly record struct MeanStamp(long Count, long Revision, Instant? Newest);
