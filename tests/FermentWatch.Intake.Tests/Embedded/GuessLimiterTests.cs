using FermentWatch.Intake.Embedded;
using Microsoft.Extensions.Time.Testing;

namespace FermentWatch.Intake.Tests.Embedded;

public sealed class GuessLimiterTests
{
    [Fact]
    public void Allows_TenFailuresForOneUser_StopsThatUserFromThereForAMinute()
    {
        var time = new FakeTimeProvider();
        var limiter = new GuessLimiter(time);

        for (int i = 0; i < GuessLimiter.PerUser; i++)
        {
            Assert.True(limiter.Allows("10.0.0.1", "cellar"));
            limiter.Failed("10.0.0.1", "cellar");
        }

        Assert.False(limiter.Allows("10.0.0.1", "cellar"));
        Assert.True(limiter.Allows("10.0.0.1", "crock-7"));
        Assert.True(limiter.Allows("10.0.0.2", "cellar"));
        time.Advance(GuessLimiter.Span);
        Assert.True(limiter.Allows("10.0.0.1", "cellar"));
    }

    [Fact]
    public void Allows_ManyFailuresForAnyUser_StopsTheAddress()
    {
        var limiter = new GuessLimiter(new FakeTimeProvider());
        for (int i = 0; i < GuessLimiter.PerAddress; i++)
            limiter.Failed("10.0.0.1", $"user{i}");

        Assert.False(limiter.Allows("10.0.0.1", "cellar"));
        Assert.True(limiter.Allows("10.0.0.2", "cellar"));
    }
}
