using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Reference.Tests.Courses;

/// <summary>What anybody who ferments would say, and effects that were published without a course.</summary>
public class CommonPracticeTests
{
    /// <summary>Common practice, no source: shredded cabbage at 20 C is between pH 3.9 and 4.6 on day 3.</summary>
    [Fact]
    public void Ph_CabbageOnDayThree_IsBetween39And46() => Assert.InRange(Cabbage(2.25, 20, 3).Ph.P50, 3.9, 4.6);

    /// <summary>Common practice, no source: a first taste at about a week; 0.7 to 1.4 % at 21 C on day 7.</summary>
    [Fact]
    public void Acidity_CabbageOnDaySeven_IsWorthATaste() => Assert.InRange(Cabbage(2.25, 21, 7).AcidityPercentLactic.P50, 0.7, 1.4);

    /// <summary>E09, 7 CFR 52.3451 and FDA CPG 585.750: kraut has 1.5 % and more. At 2 % salt and 18 C, after five weeks.</summary>
    [Fact]
    public void Acidity_FinishedCabbage_IsKraut() => Assert.True(Cabbage(2, 18, 35).AcidityPercentLactic.P50 >= 1.5);

    /// <summary>K31, Niksic et al. 2005, J. Food Protection 68:1367-1374: no significant effect of salt between 1.8 and 3.0 %.</summary>
    [Fact]
    public void Acidity_SaltBetween18And30_MakesLittleDifference()
    {
        double little = Cabbage(1.8, 18, 15).AcidityPercentLactic.P50;
        double much = Cabbage(3.0, 18, 15).AcidityPercentLactic.P50;
        Assert.InRange(much / little, 0.8, 1.1);
    }

    private static CoursePoint Cabbage(double saltPercent, double celsius, double day) => Forecaster.Run(new ForecastRequest
    {
        Recipe = JarRecipe.Of(Vegetable.Of("cabbage"), Cut.Shredded, saltPercent),
        Temperatures = TemperatureCourse.Constant(celsius),
        Days = day,
    }).Course[^1];
}
