using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Kitchen.Judging;

/// <summary>What a quantity can show where vegetables ferment. Common practice, no source.</summary>
/// <param name="Low">Smallest value that counts, in the unit of the quantity.</param>
/// <param name="High">Largest value that counts.</param>
/// <param name="LargestStep">How far a value may stand from the middle of few neighbours, which tell no noise, before it is a jump.</param>
/// <param name="LeastJump">
/// What is no jump however quiet the sensor is: the draught of a door, some steps of a coarse sensor (half a degree, a tenth of
/// pH), the steam of a pot.
/// </param>
public readonly record struct PlausibleRange(double Low, double High, double LargestStep, double LeastJump)
{
    /// <summary>The range of a quantity.</summary>
    public static PlausibleRange Of(Quantity quantity) => quantity switch
    {
        Quantity.Temperature => new(-20, 50, 6, 2),
        Quantity.Ph => new(2, 9, 0.7, 0.3),
        Quantity.Millivolts => new(-600, 600, 60, 18),
        Quantity.Humidity => new(0, 100, 40, 15),
        _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "Not a quantity we keep."),
    };

    public bool Holds(double value) => value >= Low && value <= High;
}
