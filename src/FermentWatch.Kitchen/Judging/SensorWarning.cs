using FermentWatch.Kitchen.Readings;

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

/// <summary>
/// Tells when two thermometers in one place show different rooms. Which of them is right nobody can tell from here: one may stand
/// in the sun or by the stove. The bound is this project's own; cheap parts are good to half a degree to one.
/// </summary>
public static class Disagreement
{
    /// <summary>How far apart two thermometers in one place may be, in degrees Celsius.</summary>
    public const double LargestCelsius = 2;

    private const int FewestQuarters = 4;

    /// <summary>
    /// By how much the first is above (or, negative, below) the second in the middle of the quarter hours that both have; null
    /// where that is within bounds, or there are too few to tell.
    /// </summary>
    public static double? Between(IEnumerable<ReadingMean> first, IEnumerable<ReadingMean> second)
    {
        var other = second.ToDictionary(mean => mean.Start, mean => mean.Value);
        double[] apart = [.. first.Where(mean => other.ContainsKey(mean.Start)).Select(mean => mean.Value - other[mean.Start]).Order()];
        if (apart.Length < FewestQuarters)
            return null;
        double middle = apart[apart.Length / 2];
        return Math.Abs(middle) > LargestCelsius ? middle : null;
    }
}
