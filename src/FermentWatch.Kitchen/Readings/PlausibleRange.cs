namespace FermentWatch.Kitchen.Readings;

/// <summary>What a sensor can show where vegetables ferment, in the unit in which its quantity is stored.</summary>
public readonly record struct PlausibleRange
{
    /// <summary>Smallest value that counts.</summary>
    public required double Low { get; init; }

    /// <summary>Largest value that counts.</summary>
    public required double High { get; init; }

    /// <summary>How far a value may stand from the middle of few neighbours, which tell no noise, before it is a jump.</summary>
    public required double LargestStep { get; init; }

    /// <summary>What is no jump however quiet the sensor is.</summary>
    public required double LeastJump { get; init; }

    public bool Holds(double value) => value >= Low && value <= High;
}
