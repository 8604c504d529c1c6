using NodaTime;

namespace FermentWatch.Kitchen.Readings;

/// <summary>A verdict to be written for one stored reading.</summary>
public sealed record VerdictChange(int SensorKey, Quantity Quantity, Instant MeasuredAt, Verdict Verdict);
