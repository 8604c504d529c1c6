namespace FermentWatch.Intake.Tests;

/// <summary>Waits for what a real peer or another thread brings about; fails after a time limit that a machine under load does not reach.</summary>
internal static class Eventually
{
    public static Task TrueAsync(Func<bool> condition, string what, int seconds = 90) =>
        TrueAsync(() => Task.FromResult(condition()), what, seconds);

    public static async Task TrueAsync(Func<Task<bool>> condition, string what, int seconds = 90)
    {
        long start = TimeProvider.System.GetTimestamp();
        while (!await condition())
        {
            if (TimeProvider.System.GetElapsedTime(start) > TimeSpan.FromSeconds(seconds))
                Assert.Fail($"Waited {seconds} s in vain: {what}");
            await Task.Delay(TimeSpan.FromMilliseconds(5), TimeProvider.System);
        }
    }
}
