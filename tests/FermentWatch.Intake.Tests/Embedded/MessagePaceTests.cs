using FermentWatch.Intake.Embedded;
using Microsoft.Extensions.Time.Testing;

namespace FermentWatch.Intake.Tests.Embedded;

public sealed class MessagePaceTests
{
    [Fact]
    public void Take_TenSecondsWorthAtOnce_PassesAndTheNextWaits()
    {
        var pace = new MessagePace(100, new FakeTimeProvider());

        Assert.All(Enumerable.Range(0, 1000), _ => Assert.Equal(TimeSpan.Zero, pace.Take()));

        Assert.Equal(TimeSpan.FromMilliseconds(10), pace.Take());
    }

    [Fact]
    public void Take_SteadilyAtThePace_NeverWaits()
    {
        var time = new FakeTimeProvider();
        var pace = new MessagePace(100, time);

        for (int i = 0; i < 5_000; i++)
        {
            Assert.Equal(TimeSpan.Zero, pace.Take());
            time.Advance(TimeSpan.FromMilliseconds(10));
        }
    }

    [Fact]
    public void Take_WaitedAsTold_GoesOnAtThePace()
    {
        var time = new FakeTimeProvider();
        var pace = new MessagePace(100, time);
        TimeSpan waited = TimeSpan.Zero;

        for (int i = 0; i < 2_000; i++)
        {
            TimeSpan wait = pace.Take();
            waited += wait;
            time.Advance(wait);
        }

        Assert.InRange(waited.TotalSeconds, 9.99, 10.01);
    }
}
