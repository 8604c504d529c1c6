using FermentWatch.Kinetics.Ensemble;

namespace FermentWatch.Kinetics.Tests.Ensemble;

public class RandomTests
{
    /// <summary>Known answers of Philox4x32-10 in the authors' test vectors (kat_vectors of Random123), from memory.</summary>
    [Theory]
    [InlineData(0u, 0u, 0u, 0u, 0u, 0u, 0x6627e8d5u, 0xe169c58du, 0xbc57ac4cu, 0x9b00dbd8u)]
    [InlineData(0xffffffffu, 0xffffffffu, 0xffffffffu, 0xffffffffu, 0xffffffffu, 0xffffffffu, 0x408f276du, 0x41c83b0eu, 0xa20bc7c6u, 0x6d5451fdu)]
    [InlineData(0x243f6a88u, 0x85a308d3u, 0x13198a2eu, 0x03707344u, 0xa4093822u, 0x299f31d0u, 0xd16cfe09u, 0x94fdccebu, 0x5001e420u, 0x24126ea1u)]
    public void Block_KnownAnswers_AreReproduced(uint c0, uint c1, uint c2, uint c3, uint k0, uint k1, uint a, uint b, uint c, uint d) =>
        Assert.Equal((a, b, c, d), Philox.Block(c0, c1, c2, c3, k0, k1));

    /// <summary>Quantiles of the standard normal distribution, any table.</summary>
    [Theory]
    [InlineData(0.5, 0)]
    [InlineData(0.9, 1.2815516)]
    [InlineData(0.975, 1.9599640)]
    [InlineData(0.001, -3.0902323)]
    [InlineData(1e-9, -5.9978070)]
    public void Quantile_Tabulated_AgreesToSixDigits(double p, double z) => Assert.Equal(z, NormalDistribution.Quantile(p), 5);

    [Theory]
    [InlineData(-3)]
    [InlineData(-0.4)]
    [InlineData(0)]
    [InlineData(1.7)]
    public void Cumulative_OfTheQuantile_IsTheProbability(double z) =>
        Assert.Equal(z, NormalDistribution.Quantile(NormalDistribution.Cumulative(z)), 3);

    [Fact]
    public void Draw_LatinHypercube_HasOneMemberInEverySlice()
    {
        double[] deviates = MemberPrior.Standard.Draw(7, 64);
        for (int d = 0; d < Deviate.Count; d++)
        {
            var slices = Enumerable.Range(0, 64).Select(m => (int)(64 * NormalDistribution.Cumulative(deviates[(m * Deviate.Count) + d]))).Order();
            Assert.Equal(Enumerable.Range(0, 64), slices);
        }
    }

    [Fact]
    public void Draw_DifferentKeys_Differ() => Assert.NotEqual(MemberPrior.Standard.Draw(1, 16), MemberPrior.Standard.Draw(2, 16));
}
