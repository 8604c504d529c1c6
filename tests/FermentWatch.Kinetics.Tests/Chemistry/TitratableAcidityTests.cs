using FermentWatch.Kinetics.Chemistry;

namespace FermentWatch.Kinetics.Tests.Chemistry;

public class TitratableAcidityTests
{
    /// <summary>USDA grades of canned sauerkraut, 52.2964: 10 g and 0.1 N, 1.0 % is 11.10 mL and 1.5 % is 16.65 mL.</summary>
    [Theory]
    [InlineData(11.10, 1.0)]
    [InlineData(16.65, 1.5)]
    public void PercentLacticFromTitration_WorkedExamples_AreReproduced(double millilitres, double percent) =>
        Assert.Equal(percent, TitratableAcidity.PercentLacticFromTitration(millilitres, 0.1, 10), 3);

    [Fact]
    public void PercentLactic_LacticAlone_IsItsMass() =>
        Assert.Equal(0.9008, TitratableAcidity.PercentLactic(new(0, 0.1, 0, 0, 0, 0, 0, 0)), 3);

    [Fact]
    public void PercentLactic_HalfNeutralised_CountsTheOtherHalf() =>
        Assert.Equal(0.4504, TitratableAcidity.PercentLactic(new(0.05, 0.1, 0, 0, 0, 0, 0, 0)), 3);

    /// <summary>Da Conceicao Neta et al. 2007: mole for mole; 1.5 % lactic at pH 3.6 about 102, 0.7 % at pH 4.2 about 22.</summary>
    [Theory]
    [InlineData(1.5, 3.6, 97, 105)]
    [InlineData(0.7, 4.2, 19, 24)]
    public void SournessFromAcidityAndPh_WorkedExamples_AreReproduced(double percent, double ph, double low, double high) =>
        Assert.InRange(SournessIndex.FromAcidityAndPh(percent, ph), low, high);
}
