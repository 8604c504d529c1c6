using FermentWatch.Kinetics.Salt;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Kitchen.Judging;

/// <summary>
/// Tells a reading that stands apart from its neighbours by more than the sensor's own noise. The noise is the median distance of
/// the neighbours from their median times 1.4826, which for a normal distribution is its standard deviation and which spikes among
/// them, up to half, do not move (Rousseeuw and Croux, "Alternatives to the Median Absolute Deviation", J. Am. Stat. Assoc. 88, 1993).
/// A jump stands six times as far, and never nearer than <see cref="PlausibleRange.LeastJump"/>: a sensor that shows steps of half
/// a degree has no noise for hours and then one step. Six, the widening for few neighbours and the level that lasts are this
/// project's own; on normal noise they judge less than one reading in a thousand from eight neighbours on.
/// </summary>
internal static class Jump
{
    /// <summary>Fewer neighbours than this cannot outvote a reading.</summary>
    private const int NeighboursThatOutvote = 3;

    /// <summary>Fewer neighbours than this do not tell a noise; the quantity's largest step is the measure.</summary>
    private const int NeighboursThatTellNoise = 5;

    /// <summary>From so many neighbours on their noise is taken at its word; of fewer it is easily found too small by half.</summary>
    private const double NeighboursThatSettleNoise = 16;

    private const double StandardDeviationOfMedianDeviation = 1.4826;

    private const double StandardDeviationsOfJump = 6;

    /// <summary>
    /// What is shown for as long as the model's means are, and by more than two readings, is a level: a window was opened, a
    /// sensor was moved. Where readings come at uneven intervals the neighbours before and after a step do not balance, and would
    /// outvote its edge for good.
    /// </summary>
    private static readonly Duration _levelLasts = Duration.FromMinutes(15);

    private const int ReadingsOfALevel = 3;

    /// <summary>Whether a reading is one.</summary>
    /// <param name="reading">The reading.</param>
    /// <param name="neighbours">Its neighbours within <see cref="ReadingJudge.Reach"/>.</param>
    /// <param name="range">What the quantity can show.</param>
    public static bool Is(Reading reading, Neighbours neighbours, PlausibleRange range)
    {
        RankedValues believed = neighbours.Believed;
        if (believed.Count < NeighboursThatOutvote)
            return false;
        double middle = believed.Median();
        double distance = Math.Abs(reading.Value - middle);
        // What is nearer than any jump needs no noise; that is nearly every reading.
        if (distance <= range.LeastJump)
            return false;
        double limit = Limit(believed, middle, range);
        return distance > limit && !IsOfALevel(neighbours, limit);
    }

    private static double Limit(RankedValues believed, double middle, PlausibleRange range)
    {
        if (believed.Count < NeighboursThatTellNoise)
            return range.LargestStep;
        double widening = Math.Max(1, NeighboursThatSettleNoise / believed.Count);
        double noise = StandardDeviationOfMedianDeviation * believed.MedianDistance(middle);
        return Math.Max(range.LeastJump, StandardDeviationsOfJump * widening * noise);
    }

    private static bool IsOfALevel(Neighbours neighbours, double limit)
    {
        (int readings, Duration lasts) = neighbours.Alike(limit);
        return readings >= ReadingsOfALevel && lasts >= _levelLasts;
    }
}

/// <summary>
/// Tells when a thermometer's figures have moved as if it sent another unit: new batteries and a firmware's update do that. It is
/// warned of and not corrected, because a guess would be taken silently. Differences by which it is told are this project's own.
/// </summary>
public static class UnitShift
{
    /// <summary>Near 40 below zero both scales agree; in a kitchen they are this far apart or nothing is told.</summary>
    private const double LeastMove = 8;

    private const double RoomMayMove = 4;

    /// <summary>What the figures now seem to be in while they are taken for Celsius; null where nothing speaks for a shift.</summary>
    /// <param name="before">What the place had before, in Celsius.</param>
    /// <param name="now">What the sensor's figures are now, taken for Celsius.</param>
    public static TemperatureUnit? Of(double before, double now)
    {
        if (Math.Abs(now - before) < LeastMove)
            return null;
        if (Math.Abs(CustomaryUnits.CelsiusFromFahrenheit(now) - before) <= RoomMayMove)
            return TemperatureUnit.Fahrenheit;
        // Figures that were Fahrenheit and taken for Celsius so far come down to what they should have been.
        return Math.Abs(CustomaryUnits.FahrenheitFromCelsius(now) - before) <= RoomMayMove * 1.8 ? TemperatureUnit.Celsius : null;
    }
}
