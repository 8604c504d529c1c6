using NodaTime;

namespace FermentWatch.Kitchen.Notices;

/// <summary>How long to wait before a delivery is tried again: doubling from ten seconds to a quarter of an hour.</summary>
public static class Backoff
{
    private static readonly Duration First = Duration.FromSeconds(10);
    private static readonly Duration Longest = Duration.FromMinutes(15);

    /// <summary>The wait after the given number of attempts, at least 1.</summary>
    public static Duration After(int attempts) =>
        attempts >= 8 ? Longest : Duration.Min(Longest, First * Math.Pow(2, Math.Max(0, attempts - 1)));
}
