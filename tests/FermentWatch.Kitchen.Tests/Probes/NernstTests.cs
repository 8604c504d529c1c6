using FermentWatch.Kitchen.Probes;

namespace FermentWatch.Kitchen.Tests.Probes;

public sealed class NernstTests
{
    // ln 10 R T / F; at 25 C USP chapter 791 gives k = 0.05916 + 0.000198 (t - 25) V.
    [Theory]
    [InlineData(0, 54.20)]
    [InlineData(10, 56.18)]
    [InlineData(20, 58.17)]
    [InlineData(25, 59.16)]
    [InlineData(37, 61.54)]
    [InlineData(50, 64.12)]
    public void MillivoltsPerPh_AtATemperature_IsTheIdealSlope(double celsius, double expected) =>
        Assert.Equal(expected, Nernst.MillivoltsPerPh(celsius), 0.005);

    [Theory]
    [InlineData(-273.15)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void MillivoltsPerPh_NoTemperature_Throws(double celsius) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Nernst.MillivoltsPerPh(celsius));
}
