namespace FermentWatch.Kitchen.Judging;

/// <summary>Something about a sensor that a person should look at.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Words">What it is and what to do, in a sentence or two.</param>
public sealed record SensorWarning(SensorWarningKind Kind, string Words)
{
    /// <summary>The other sensor of two that disagree.</summary>
    public Guid? OtherSensor { get; init; }
}

/// <summary>What a person should look at.</summary>
public enum SensorWarningKind
{
    /// <summary>Not heard for longer than is usual for it.</summary>
    Silent = 1,

    /// <summary>The same value for more than a day.</summary>
    Stuck = 2,

    /// <summary>Another thermometer in the same place shows another room.</summary>
    Disagrees = 3,

    /// <summary>Its figures seem to be in another unit than before.</summary>
    UnitShift = 4,

    /// <summary>Its probe's calibration is not accepted, too old, or was never done.</summary>
    Calibration = 5,

    /// <summary>The probe drifted between its last two calibrations.</summary>
    Drift = 6,
}
