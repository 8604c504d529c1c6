using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Kinetics.Tests.Forecasting;

public class ForecasterTests
{
    /// <summary>
    /// Pederson and Albury 1969, The Sauerkraut Fermentation, NY State Agric. Exp. Station Bulletin 824, as told in FAO Agric.
    /// Services Bulletin 134 (1998): 2.25 % salt, about 0.4 % on day 10 at 7.5 C, 1.7 to 2.3 % on day 20 at 18 C. A first
    /// taste after about a week on the counter: common practice, no source.
    /// </summary>
    [Theory]
    [InlineData(18, 20, 1.5, 2.4)]
    [InlineData(7.5, 10, 0.3, 0.55)]
    [InlineData(21, 7, 0.7, 1.4)]
    public void Run_CabbageAtOneTemperature_MedianAcidityIsAsPublished(double celsius, double day, double low, double high)
    {
        Forecast forecast = Forecaster.Run(Cabbage(celsius) with { Days = day });
        Assert.InRange(forecast.Course[^1].AcidityPercentLactic.P50, low, high);
    }

    [Fact]
    public void Run_MeterReading_NarrowsTheCourseAroundIt()
    {
        ForecastRequest blind = Cabbage(20) with { Days = 10 };
        Forecast before = Forecaster.Run(blind);
        double measured = before.Course[3].Ph.P50 + 0.1;
        Forecast after = Forecaster.Run(blind with { Readings = [new PhReading(3, measured, PhMethod.Meter)] });
        Assert.True(Width(after.Course[3].Ph) < 0.6 * Width(before.Course[3].Ph));
        Assert.InRange(after.Course[3].Ph.P50, before.Course[3].Ph.P50, measured + 0.02);
        Assert.Empty(after.Flagged);
    }

    private static double Width(Quantiles quantiles) => quantiles.P90 - quantiles.P10;

    private static ForecastRequest Cabbage(double celsius) => new()
    {
        Recipe = JarRecipe.Of(Vegetable.Of("cabbage"), Cut.Shredded, 2.25),
        Temperatures = TemperatureCourse.Constant(celsius),
    };
}
