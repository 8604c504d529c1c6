using CsCheck;
using FermentWatch.Web.Pages.Charts;

namespace FermentWatch.Service.Tests.Pages;

public class NiceTicksTests
{
    [Theory]
    [InlineData(3, 6.5, new double[] { 3, 4, 5, 6 })]
    [InlineData(0, 1.38, new double[] { 0, 0.5, 1 })]
    [InlineData(9.2, 14.4, new double[] { 10, 12, 14 })]
    public void Within_UsualSpans_AreRound(double low, double high, double[] expected) =>
        Assert.Equal(expected, NiceTicks.Within(low, high, 4));

    [Fact]
    public void Within_AnySpan_LiesInsideAndIsNotTooMany() =>
        Gen.Select(Gen.Double[-100, 100], Gen.Double[0.01, 500]).Sample((low, span) =>
        {
            var ticks = NiceTicks.Within(low, low + span, 4);
            return ticks.Count is >= 1 and <= 9 && ticks.All(tick => tick >= low - (span * 1e-6) && tick <= low + (span * 1.000001));
        });
}
