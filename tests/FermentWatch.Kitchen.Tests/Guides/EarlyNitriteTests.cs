using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Guides;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Tests.Words;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Guides;

public class EarlyNitriteTests
{
    private static readonly LocalDate Packed = SampleJars.Packed.InZone(SampleJars.Vienna).Date;

    [Theory]
    [InlineData("cabbage", true)]
    [InlineData("beet", true)]
    [InlineData("daikon", true)]
    [InlineData("celery", true)]
    [InlineData("fennel", true)]
    [InlineData("spinach", true)]
    [InlineData("carrot", false)]
    [InlineData("cucumber", false)]
    public void Concerns_ByWhatIsInIt_TakesWhatNobodyKnowsAsRich(string produce, bool expected) =>
        Assert.Equal(expected, EarlyNitrite.Concerns(SampleJars.Of(produce)));

    [Fact]
    public void Concerns_AShareOfAVegetableRichInIt_IsEnough()
    {
        Jar jar = SampleJars.Of("cucumber");
        jar.Portions = [new Portion("cucumber", 1), new Portion("radish", 0.05), new Portion("ginger", 0.04)];
        Assert.True(EarlyNitrite.Concerns(jar));
        jar.Portions = [new Portion("cucumber", 1), new Portion("ginger", 0.04)];
        Assert.False(EarlyNitrite.Concerns(jar));
    }

    [Fact]
    public void Until_NineInTenBelowFromDayFourOn_IsThatDate() =>
        Assert.Equal(Packed.PlusDays(4), EarlyNitrite.Until(SampleJars.Of("beet"), BelowOnDayFour(default), SampleJars.Vienna));

    [Fact]
    public void Until_NothingForecast_IsThreeWeeks() =>
        Assert.Equal(Packed.PlusDays(21), EarlyNitrite.Until(SampleJars.Of("beet"), null, SampleJars.Vienna));

    /// <summary>Half are below 4.5 on day 2, nine in ten on day 3, not on day 3.5, and from day 4 on.</summary>
    internal static JarForecast BelowOnDayFour(PassageDays target)
    {
        (double Day, double P50, double P90)[] course = [(0, 6, 6.2), (2, 4.4, 4.9), (3, 4.2, 4.49), (3.5, 4.2, 4.5), (4, 4.0, 4.4), (10, 3.6, 3.9)];
        var none = new Quantiles(0, 0, 0);
        return new JarForecast(Guid.NewGuid(), SampleJars.Packed, Packed.AtStartOfDayInZone(SampleJars.Vienna).ToInstant(), "", new Forecast
        {
            ModelVersion = "test", AcidLine = default, Ph4 = default, CentreAcidLine = default, CentrePh4 = default, Target = target, Flagged = [],
                Remarks = [],
            Course = [.. course.Select(each => new CoursePoint(each.Day, 20, new Quantiles(each.P50 - 0.3, each.P50, each.P90), none, 0, none))],
        });
    }
}
