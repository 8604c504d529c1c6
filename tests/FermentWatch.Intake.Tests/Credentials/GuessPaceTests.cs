using FermentWatch.Kitchen.Members;
using Microsoft.Extensions.Time.Testing;

namespace FermentWatch.Intake.Tests.Credentials;

public sealed class GuessPaceTests
{
    private readonly FakeTimeProvider _time = new();

    [Fact]
    public void WaitOf_FailuresOfOneUser_DoublesFromTheFourthTryOnForThatUserFromThereOnly()
    {
        GuessPace pace = Pace();
        var waits = new List<double>();
        for (int i = 0; i < 10; i++)
        {
            waits.Add(pace.WaitOf("10.0.0.1", "cellar").TotalSeconds);
            pace.Failed("10.0.0.1", "cellar");
        }

        Assert.Equal([0, 0, 0, 0.5, 1, 2, 4, 5, 5, 5], waits);
        Assert.Equal(TimeSpan.Zero, pace.WaitOf("10.0.0.1", "crock-7"));
        Assert.Equal(TimeSpan.Zero, pace.WaitOf("10.0.0.2", "cellar"));
        _time.Advance(GuessPace.Memory);
        Assert.Equal(TimeSpan.Zero, pace.WaitOf("10.0.0.1", "cellar"));
    }

    [Fact]
    public async Task WaitAsync_After200FailuresOfOthersFromTheAddress_LetsARightOneTryAfterASecond()
    {
        GuessPace pace = Pace();
        for (int i = 0; i < 200; i++)
            pace.Failed("10.0.0.1", $"user{i}");

        Task<bool> tries = pace.WaitAsync("10.0.0.1", "cellar", CancellationToken.None);
        Assert.False(tries.IsCompleted);
        _time.Advance(GuessPace.WaitOfOthers);
        Assert.True(await tries);
        Assert.True(await pace.WaitAsync("10.0.0.2", "cellar", CancellationToken.None));
    }

    [Fact]
    public async Task WaitAsync_MoreThanMayWait_AreSentAwayAndTheOthersTryInTheEnd()
    {
        GuessPace pace = Pace();
        for (int i = 0; i < 10; i++)
            pace.Failed("10.0.0.1", "cellar");

        Task<bool>[] waiting = [.. Enumerable.Range(0, 3).Select(_ => pace.WaitAsync("10.0.0.1", "cellar", CancellationToken.None))];
        Assert.False(await waiting[2]);
        _time.Advance(TimeSpan.FromSeconds(5));
        Assert.True(await waiting[0] && await waiting[1]);
    }

    [Fact]
    public void Succeeded_AfterFailures_ForgetsWhatWasMistyped()
    {
        GuessPace pace = Pace();
        for (int i = 0; i < 5; i++)
            pace.Failed("10.0.0.1", "cellar");
        pace.Succeeded("10.0.0.1", "cellar");
        Assert.Equal(TimeSpan.Zero, pace.WaitOf("10.0.0.1", "cellar"));
    }

    private GuessPace Pace() => new(_time, TimeSpan.FromSeconds(5), 2);
}
