namespace FermentWatch.Kitchen.Readings;

/// <summary>What a stored reading is worth. Revisable: a new neighbour can turn a jump into a reading that counts.</summary>
public enum Verdict
{
    /// <summary>Stored, not judged yet.</summary>
    Pending = 0,

    /// <summary>The model may read it.</summary>
    Counts = 1,

    /// <summary>A value by which the part says that it has no value: 85.0 C at power-up, -127 C unplugged.</summary>
    Sentinel = 2,

    /// <summary>Outside what the quantity or this sensor can plausibly show.</summary>
    OutOfRange = 3,

    /// <summary>Too far from its neighbours in time to be the same room.</summary>
    Jump = 4,

    /// <summary>The same value for so long that the sensor must hang.</summary>
    Stuck = 5,

    /// <summary>Reached us too long after it was measured.</summary>
    TooOld = 6,

    /// <summary>Its clock runs ahead of ours by more than a clock may.</summary>
    ClockNotBelieved = 7,

    /// <summary>Measured with a probe whose calibration is not accepted.</summary>
    BadCalibration = 8,

    /// <summary>It could not be judged at all and is set aside, so that it keeps nothing else from being judged.</summary>
    SetAside = 9,
}
