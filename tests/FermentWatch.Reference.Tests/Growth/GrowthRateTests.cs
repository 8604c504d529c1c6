using FermentWatch.Kinetics.Guilds;
using FermentWatch.Reference.Tests.Published;

namespace FermentWatch.Reference.Tests.Growth;

/// <summary>
/// The finishers' temperature, pH, salt and acid term against growth_rates.csv (Dalcanton et al. 2018, J. Food Quality
/// 1726761, table 1), with nothing but the optimum rate fitted. Accuracy factor: Ross 1996, J. Appl. Bacteriol. 81:501-508.
/// </summary>
public class GrowthRateTests
{
    /// <summary>Rates are printed to four decimals: below half of the last one nothing was seen.</summary>
    private const double Unseen = 0.00005;

    [Fact]
    public void Share_RowsThatGrew_AccuracyFactorIsAtMostOneAndAHalf() =>
        Assert.InRange(AccuracyFactor(totalLactate: true), 1, 1.5);

    [Fact]
    public void Share_RowsThatDidNotGrow_IsZeroToThePrintedDigits()
    {
        double optimum = OptimumRate(totalLactate: true);
        Assert.Equal(5, GrowthRateRow.All.Count(row => row.RatePerHour == 0));
        Assert.All(GrowthRateRow.All.Where(row => row.RatePerHour == 0), row =>
            Assert.InRange(optimum * row.ShareOfOptimum(ModelParameters.Current), 0, Unseen));
    }

    /// <summary>
    /// Which form of lactate did it: total, beside salt. At pH 5.5 to 7.5 almost none of it is undissociated, and that alone
    /// explains the rows worse.
    /// </summary>
    [Fact]
    public void Share_UndissociatedAcidAlone_ExplainsTheRowsWorse() =>
        Assert.True(AccuracyFactor(totalLactate: false) > AccuracyFactor(totalLactate: true) + 0.05,
        $"{AccuracyFactor(false):0.00} against {AccuracyFactor(true):0.00}");

    private static double AccuracyFactor(bool totalLactate)
    {
        double optimum = OptimumRate(totalLactate);
        return Math.Exp(Grown()
            .Average(row => Math.Abs(Math.Log(optimum * row.ShareOfOptimum(ModelParameters.Current, totalLactate) / row.RatePerHour))));
    }

    private static double OptimumRate(bool totalLactate) =>
        Math.Exp(Grown().Average(row => Math.Log(row.RatePerHour / row.ShareOfOptimum(ModelParameters.Current, totalLactate))));

    private static IEnumerable<GrowthRateRow> Grown() => GrowthRateRow.All.Where(row => row.RatePerHour > 0);
}
