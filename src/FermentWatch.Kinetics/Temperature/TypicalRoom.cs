namespace FermentWatch.Kinetics.Temperature;

/// <summary>A place with no sensor: what the household says it is like, taken widely.</summary>
/// <param name="MeanCelsius">Typical temperature, Celsius.</param>
/// <param name="SpreadCelsius">Standard deviation of what it may really be, Celsius.</param>
public sealed record TypicalRoom(double MeanCelsius, double SpreadCelsius)
{
    /// <summary>A cool place: a pantry, a cool cellar. Our own reading of the word.</summary>
    public static TypicalRoom Cool { get; } = new(15, 2.5);

    /// <summary>A usual kitchen. Our own reading of the word.</summary>
    public static TypicalRoom Usual { get; } = new(20, 2);

    /// <summary>A warm kitchen. Our own reading of the word.</summary>
    public static TypicalRoom Warm { get; } = new(25, 2.5);

    /// <summary>A refrigerator. Our own reading of the word.</summary>
    public static TypicalRoom Refrigerator { get; } = new(4, 1.5);
}
