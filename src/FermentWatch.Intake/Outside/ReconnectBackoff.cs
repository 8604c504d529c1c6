namespace FermentWatch.Intake.Outside;

/// <summary>
/// How long to wait before the next try to connect: doubling from 1 to 30 seconds, and a share of it left to chance, so that many
/// clients of a broker that comes back do not all come at once. Where the machine answers that nobody listens yet, which costs
/// neither side anything, the wait stays below 4 seconds, so that a restarted broker has us back in 5.
/// </summary>
public static class ReconnectBackoff
{
    private const double FirstSeconds = 1;
    private const double LongestSeconds = 30;
    private const double LongestWhileNobodyListensSeconds = 4;

    /// <summary>The wait.</summary>
    /// <param name="failures">Failures in a row, at least 1.</param>
    /// <param name="nobodyListens">Whether the last failure was a refused connection.</param>
    /// <param name="chance">From 0 to below 1; the wait is between half and all of the step.</param>
    public static TimeSpan Wait(int failures, bool nobodyListens, double chance)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(failures, 1);
        double longest = nobodyListens ? LongestWhileNobodyListensSeconds : LongestSeconds;
        // Beyond this step the wait is at its longest; stopping the doubling here keeps it from overflowing.
        double step = FirstSeconds * Math.Pow(2, Math.Min(failures - 1, 10));
        return TimeSpan.FromSeconds(Math.Max(FirstSeconds, Math.Min(step, longest) * (1 + chance) / 2));
    }
}
