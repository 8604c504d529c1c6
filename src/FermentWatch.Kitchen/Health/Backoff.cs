using NodaTime;

namespace FermentWatch.Kitchen.Health;

/// <summary>How long to wait before what failed is tried again: doubling from the first wait to the longest.</summary>
/// <param name="First">After the first failure, above zero.</param>
/// <param name="Longest">However often it failed, at least <paramref name="First"/>.</param>
public sealed record Backoff(Duration First, Duration Longest)
{
    // Beyond this the longest has long been reached; stopping the doubling here keeps it from overflowing.
    private const int MostDoublings = 30;

    /// <summary>What goes out of the house: ten seconds to a quarter of an hour.</summary>
    public static Backoff Outside { get; } = new(Duration.FromSeconds(10), Duration.FromMinutes(15));

    /// <summary>The wait after so many failures in a row, at least 1.</summary>
    public Duration After(int failures) => Duration.Min(Longest, First * Math.Pow(2, Math.Clamp(failures - 1, 0, MostDoublings)));
}
