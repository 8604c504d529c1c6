namespace FermentWatch.Kitchen.Readings;

/// <summary>Length of a roll-up. Buckets start at whole multiples since the Unix epoch.</summary>
public enum MeanSpan
{
    OneMinute = 1,
    QuarterHour = 15,
    Hour = 60,
}
