using CsCheck;
using FermentWatch.Intake.Outside;

namespace FermentWatch.Intake.Tests.Outside;

public sealed class ReconnectBackoffTests
{
    [Theory]
    [InlineData(1, 1)]
    [InlineData(2, 1)]
    [InlineData(3, 2)]
    [InlineData(4, 4)]
    [InlineData(5, 8)]
    [InlineData(6, 15)]
    [InlineData(1_000_000, 15)]
    public void Wait_LeastChance_DoublesToHalfOfThirtySeconds(int failures, double expectedSeconds) =>
        Assert.Equal(TimeSpan.FromSeconds(expectedSeconds), ReconnectBackoff.Wait(failures, false, 0));

    [Fact]
    public void Wait_Any_LiesBetweenOneAndThirtySeconds() =>
        Gen.Select(Gen.Int[1, int.MaxValue], Gen.Bool, Gen.Double[0, 0.999]).Sample((failures, nobody, chance) =>
            Assert.InRange(ReconnectBackoff.Wait(failures, nobody, chance).TotalSeconds, 1, nobody ? 4 : 30));

    [Fact]
    public void Wait_BrokerDownForAMinute_TriesAtMostFortyTimesAndIsBackWithinFourSeconds()
    {
        double at = 0;
        int tries = 0;
        while (at < 60)
            at += ReconnectBackoff.Wait(++tries, nobodyListens: true, chance: 0).TotalSeconds;

        Assert.InRange(tries, 1, 40);
        Assert.InRange(at - 60, 0, 4);
    }
}
