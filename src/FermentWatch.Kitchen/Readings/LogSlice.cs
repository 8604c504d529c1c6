using NodaTime;

namespace FermentWatch.Kitchen.Readings;

/// <summary>A piece of the log in the order in which it was written.</summary>
/// <param name="Readings">The readings, possibly none.</param>
/// <param name="Cursor">The place of the last of them, after which the next slice begins.</param>
public sealed record LogSlice(IReadOnlyList<JudgedReading> Readings, long Cursor);

/// <summary>Readings of one sensor that have no verdict yet.</summary>
/// <param name="SensorKey">The sensor.</param>
/// <param name="After">They were written after this place.</param>
/// <param name="UpTo">They were written up to this place.</param>
public sealed record WaitingReadings(int SensorKey, long After, long UpTo);

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
