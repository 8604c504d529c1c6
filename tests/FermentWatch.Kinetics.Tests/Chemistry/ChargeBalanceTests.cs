using CsCheck;
using FermentWatch.Kinetics.Chemistry;

namespace FermentWatch.Kinetics.Tests.Chemistry;

public class ChargeBalanceTests
{
    private static AcidMixture Nothing { get; } = new(0, 0, 0, 0, 0, 0, 0, 0);

    /// <summary>Pure water at zero ionic strength: half of pKw 13.995.</summary>
    [Fact]
    public void Ph_PureWater_IsNeutral() => Assert.Equal(13.995 / 2, ChargeBalance.Ph(Nothing, 22.5), 9);

    /// <summary>Closed form of a weak acid alone: h^2 + K h - K c = 0, at zero ionic strength and with hydroxide left out.</summary>
    [Theory]
    [InlineData(0.1)]
    [InlineData(0.01)]
    public void Ph_AceticAcidAlone_IsTheRootOfTheQuadratic(double concentration)
    {
        double k = Math.Pow(10, -4.756);
        double h = (-k + Math.Sqrt((k * k) + (4 * k * concentration))) / 2;
        Assert.Equal(-Math.Log10(h), ChargeBalance.Ph(Nothing with { Acetic = concentration }, 20), 6);
    }

    /// <summary>Half neutralised lactic acid sits at its apparent pKa, but for the free hydrogen ion.</summary>
    [Fact]
    public void Ph_LacticHalfNeutralised_IsTheApparentPka()
    {
        double ionic = 0.4 + 0.05;
        double root = Math.Sqrt(ionic);
        double apparent = 3.857 - (0.507 * ((root / (1 + root)) - (0.3 * ionic)));
        double ph = ChargeBalance.Ph(Nothing with { Lactic = 0.1, StrongIonDifference = 0.05, Salt = 0.4 }, 22.5);
        Assert.InRange(ph, apparent, apparent + 0.01);
    }

    [Fact]
    public void Ph_AnyMixture_BalancesTheCharges()
    {
        Gen.Double[0, 0.3].Array[8].Sample(c =>
        {
            var mixture = new AcidMixture(c[0] / 2, c[1], c[2], c[3] / 5, c[4] / 10, c[5] / 10, c[6] / 5, 3 * c[7]);
            double ph = ChargeBalance.Ph(mixture, 15);
            Assert.InRange(ph, 1, 14);
            (double excess, _) = ChargeBalance.Excess(mixture, DissociationConstants.At(mixture.IonicStrength), 15, Math.Pow(10, -ph));
            Assert.InRange(excess, -1e-9, 1e-9);
        });
    }

    [Fact]
    public void Ph_MoreLacticAcid_IsLower()
    {
        Gen.Select(Gen.Double[0, 0.2], Gen.Double[0.001, 0.1]).Sample((lactic, more) =>
        {
            AcidMixture mixture = Nothing with { StrongIonDifference = 0.08, Malic = 0.02, SideChain = 0.02, Lactic = lactic, Salt = 0.4 };
            Assert.True(ChargeBalance.Ph(mixture with { Lactic = lactic + more }, 20) < ChargeBalance.Ph(mixture, 20));
        });
    }

    [Fact]
    public void Ph_Warmer_MovesTheLacticConstantAsPublished()
    {
        AcidMixture mixture = Nothing with { Lactic = 0.1, StrongIonDifference = 0.05 };
        double shift = ChargeBalance.Ph(mixture, 2.5) - ChargeBalance.Ph(mixture, 22.5);
        Assert.InRange(shift, 0.018, 0.021);
    }
}
