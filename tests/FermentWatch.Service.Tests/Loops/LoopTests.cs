using FermentWatch.Service.Loops;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;

namespace FermentWatch.Service.Tests.Loops;

public class LoopTests
{
    private static readonly int Rounds = Environment.GetEnvironmentVariable("FERMENTWATCH_TESTS_LONG") == "1" ? 5_000 : 50;

    /// <summary>A waking that comes as the one before is taken up must be neither lost nor keep those that follow from being heard.</summary>
    [Fact]
    public async Task Wake_FromManySidesAtOnce_IsFollowedByAPassEachTime()
    {
        int passes = 0;
        using var loop = new Loop("judging", (_, _) => Task.FromResult(Interlocked.Increment(ref passes)), new FakeTimeProvider(),
            NullLogger<Loop>.Instance);
        await loop.StartAsync(default);
        for (int round = 0; round < Rounds; round++)
        {
            await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() =>
            {
                for (int call = 0; call < 50_000; call++)
                    loop.Wake();
            })));
            await RestAsync();
            int before = Volatile.Read(ref passes);
            loop.Wake();
            Assert.True(SpinWait.SpinUntil(() => Volatile.Read(ref passes) > before, TimeSpan.FromMinutes(3)), $"Nobody heard in round {round}.");
        }
        await loop.StopAsync(default);

        // A waking that waits for its pass would take up a lost one with it.
        async Task RestAsync()
        {
            for (int seen = -1; seen != Volatile.Read(ref passes); await Task.Delay(TimeSpan.FromMilliseconds(5), TimeProvider.System))
                seen = Volatile.Read(ref passes);
        }
    }
}
