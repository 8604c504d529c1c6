namespace FermentWatch.Kitchen.Sensors;

/// <summary>How the payload of a source says when it was measured.</summary>
public enum SourceTime
{
    /// <summary>It does not: the time is that of arrival. SenML packs follow their own rule.</summary>
    Arrival = 0,

    /// <summary>Seconds since the Unix epoch, possibly with a fraction.</summary>
    UnixSeconds = 1,

    /// <summary>Milliseconds since the Unix epoch.</summary>
    UnixMilliseconds = 2,

    /// <summary>ISO 8601 with an offset or Z.</summary>
    Iso8601 = 3,
}
