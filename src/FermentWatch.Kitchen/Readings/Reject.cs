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

/// <summary>Why a payload, or a field of it, could not be stored as a reading.</summary>
public enum RejectReason
{
    /// <summary>The payload is not what its topic or rule says it is.</summary>
    NotParseable = 1,

    /// <summary>The payload is larger than the door allows.</summary>
    TooLarge = 2,

    /// <summary>The unit is not one we know, or not one of the quantity.</summary>
    UnknownUnit = 3,

    /// <summary>NaN, infinity, null or empty where a number belongs. Costs only its own field.</summary>
    NoValue = 4,

    /// <summary>A retained message replayed by an outside broker: last known, time unknown.</summary>
    RetainedReplay = 5,

    /// <summary>Nobody has told us of a sensor with this topic.</summary>
    UnknownSensor = 6,

    /// <summary>The topic names a quantity we do not keep.</summary>
    UnknownQuantity = 7,

    /// <summary>Whoever sent it may not publish on its topic.</summary>
    NotAllowed = 8,

    /// <summary>The time it bears is too far ahead of ours, or too long ago, to be that of a measurement.</summary>
    TimeNotBelieved = 9,
}

/// <summary>How often one topic was rejected for one reason, with the last example.</summary>
public sealed record RejectCount(Reject Last, long Count);
