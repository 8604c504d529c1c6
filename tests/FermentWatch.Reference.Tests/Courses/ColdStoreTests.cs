using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Reference.Tests.Courses;

/// <summary>
/// K70, Cheigh and Park 1994, Crit. Rev. Food Sci. Nutr. 34:175, cold store table: ripe kimchi keeps its 0.57 to 0.60 % for three
/// months at -5 to 0 C. Assumed: ripened at 20 C until its brine has
/// 0.65 %, which evens out with the leaves to less, then -3 C.
/// </summary>
public class ColdStoreTests
{
    [Fact]
    public void Acidity_RipeNapaAtMinusThree_KeepsForThreeMonths()
    {
        ForecastRequest warm =
            new() { Recipe = JarRecipe.Of(Vegetable.Of("napa"), Cut.SaltedLeaves, 2.5), Temperatures = TemperatureCourse.Constant(20), Days = 5,
            Target = new ForecastTarget(TargetKind.AcidityPercentLactic, 0.65) };
        double ripe = Forecaster.Run(warm).Target!.Value.P50!.Value;
        Forecast stored = Forecaster.Run(
            warm with { Temperatures = TemperatureCourse.Constant(20).Then(ripe, TemperatureCourse.Constant(-3)), Days = ripe + 90 });
        Assert.InRange(stored.Course[^1].AcidityPercentLactic.P50, 0.57 * 0.9, 0.60 * 1.1);
    }
}
