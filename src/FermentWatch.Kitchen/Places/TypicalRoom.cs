namespace FermentWatch.Kitchen.Places;

/// <summary>A temperature in words, as a number with its spread. Common practice, no source: what people mean by these words.</summary>
/// <param name="MeanCelsius">Middle of what the word means.</param>
/// <param name="SpreadCelsius">Standard deviation between kitchens that use the word.</param>
public readonly record struct TypicalRoom(double MeanCelsius, double SpreadCelsius)
{
    /// <summary>The numbers behind a word.</summary>
    public static TypicalRoom Of(TypicalTemperature word) => word switch
    {
        TypicalTemperature.ColdStore => new(4, 1.5),
        TypicalTemperature.Cellar => new(12, 2.5),
        TypicalTemperature.Cool => new(17, 2),
        TypicalTemperature.Usual => new(20.5, 2),
        TypicalTemperature.Warm => new(25, 2.5),
        _ => throw new ArgumentOutOfRangeException(nameof(word), word, "Not a temperature in words."),
    };
}
