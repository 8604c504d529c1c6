namespace FermentWatch.Kitchen.Readings;

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
