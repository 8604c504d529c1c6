namespace FermentWatch.TestKit;

/// <summary>Waiting for a real peer, which has a clock of its own.</summary>
public static class Patience
{
    private static readonly TimeSpan _longest = TimeSpan.FromMinutes(3);

    /// <summary>Waits until something is true.</summary>
    /// <exception cref="TimeoutException">It did not become true within three minutes.</exception>
    public static async Task UntilAsync(Func<bool> isTrue, string what)
    {
        long start = TimeProvider.System.GetTimestamp();
        while (!isTrue())
        {
            if (TimeProvider.System.GetElapsedTime(start) > _longest)
                throw new TimeoutException($"Waited in vain until {what}.");
            await Task.Delay(TimeSpan.FromMilliseconds(5), TimeProvider.System);
        }
    }
}
