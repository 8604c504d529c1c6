using FermentWatch.Kitchen.Words;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>Until which day gas is to be reckoned with: a brine bag is left alone, a tight lid let out. Common practice, no source.</summary>
public static class BubblingEnds
{
    private const int UsualDay = 10;
    private const int CoolDay = 14;
    private const int ColdDay = 21;

    /// <summary>The last day.</summary>
    /// <param name="celsius">Temperature of the jar, Celsius; null where nothing is known of it.</param>
    public static int Day(double? celsius) => celsius is not { } known ? UsualDay : WarmthClasses.Of(known) switch
    {
        Warmth.Cold => ColdDay,
        Warmth.Cool => CoolDay,
        _ => UsualDay,
    };
}
