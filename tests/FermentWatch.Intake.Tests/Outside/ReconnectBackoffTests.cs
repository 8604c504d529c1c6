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
        Assert.Equal(TimeSpan.FromSeconds(expectedSeconds), ReconnectBackoff.Wait(failures, 0));

    [Fact]
    public void Wait_Any_LiesBetweenOneAndThirtySeconds() =>
        Gen.Select(Gen.Int[1, int.MaxValue], Gen.Double[0, 0.999]).Sample((failures, chance) =>
            Assert.InRange(ReconnectBackoff.Wait(failures, chance).TotalSeconds, 1, 30));

    [Fact]
    public void LookAgain_Any_LiesBetweenOneAndTwoSeconds() =>
        Gen.Double[0, 0.999].Sample(chance => Assert.InRange(ReconnectBackoff.LookAgain(chance).TotalSeconds, 1, 2));
}
