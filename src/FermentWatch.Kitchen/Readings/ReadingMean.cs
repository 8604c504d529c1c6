using NodaTime;

namespace FermentWatch.Kitchen.Readings;

/// <summary>Mean of the readings that count within one bucket.</summary>
/// <param name="Start">Start of the bucket.</param>
/// <param name="Value">Arithmetic mean, added up in the order of measurement, so that the same readings give the same bits.</param>
/// <param name="Minimum">Smallest value in the bucket.</param>
/// <param name="Maximum">Largest value in the bucket.</param>
/// <param name="Count">How many readings it holds, at least 1.</param>
public sealed record ReadingMean(Instant Start, double Value, double Minimum, double Maximum, int Count);

/// <summary>Length of a roll-up. Buckets start at whole multiples since the Unix epoch.</summary>
public enum MeanSpan
{
    QuarterHour = 15,
    Hour = 60,
    SixHours = 360,
    Day = 1440,
}
