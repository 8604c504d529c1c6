namespace FermentWatch.Kitchen.Readings;

/// <summary>How the time of a reading is known.</summary>
public enum TimeSource
{
    /// <summary>No time came with it: the time is that of arrival at our door.</summary>
    Arrival = 1,

    /// <summary>The payload carried an absolute time.</summary>
    Payload = 2,

    /// <summary>The payload carried a time relative to its arrival.</summary>
    PayloadRelative = 3,
}
