using FermentWatch.Intake.Embedded;
using Microsoft.Extensions.Time.Testing;

namespace FermentWatch.Intake.Tests.Embedded;

public sealed class UserShareTests
{
    [Fact]
    public void EnterAsync_MoreBytesThanMayWait_AreAdmittedInOrderAsOthersLeave()
    {
        var share = new UserShare(0, 1_000, TimeProvider.System);
        Task first = share.EnterAsync(600), second = share.EnterAsync(600), third = share.EnterAsync(100), large = share.EnterAsync(5_000);
        Assert.Equal((true, false, false, false), (first.IsCompleted, second.IsCompleted, third.IsCompleted, large.IsCompleted));

        share.Leave(600);
        Assert.Equal((true, true, false), (second.IsCompleted, third.IsCompleted, large.IsCompleted));
        share.Leave(600);
        Assert.False(large.IsCompleted);
        share.Leave(100);
        Assert.True(large.IsCompleted);
    }

    [Fact]
    public void Take_OverAllConnections_WaitsOnceTenSecondsWorthIsUsedUp()
    {
        var share = new UserShare(5, 1_000, new FakeTimeProvider());
        Assert.All(Enumerable.Range(0, 50), _ => Assert.Equal(TimeSpan.Zero, share.Take()));
        Assert.Equal(TimeSpan.FromSeconds(0.2), share.Take());
    }
}
