using FermentWatch.Kitchen.ColdStore;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Tests.Doubles;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.ColdStore;

public class ColdStockTests
{
    private static readonly LocalDate Today = new(2026, 12, 1);

    [Fact]
    public void InOrder_SourerThanWantedComesFirst_ThenWhatIsPublishedToKeepLeastLong()
    {
        ColdJar kraut = Cold(1, "cabbage", chilledDay: 20, acidity: 1.3), kimchi = Cold(2, "napa", chilledDay: 30, acidity: 0.8),
            older = Cold(3, "cabbage", chilledDay: 12, acidity: 1.4), sour = Cold(4, "cabbage", chilledDay: 31, acidity: 1.51);
        Assert.Equal([4, 2, 3, 1], ColdStock.InOrder([kraut, kimchi, older, sour]).Select(each => each.Jar.Number));
        Assert.Equal([false, false, false, true], new[] { kraut, kimchi, older, sour }.Select(each => each.IsSourerThanWanted));
    }

    /// <summary>Colorado State's older and newer advice and trade practice on kimchi: 1, 2 and 4 weeks; USDA Guide 6 (2015): pickles 4 to 6
    /// months, kraut several.</summary>
    [Theory]
    [InlineData("napa", 14)]
    [InlineData("cabbage", 120)]
    [InlineData("cucumber", 120)]
    public void EatFirstFrom_Vegetable_IsTheStricterEndOfWhatIsPublished(string produce, int days)
    {
        ColdJar jar = Cold(1, produce, chilledDay: 20, acidity: null);
        Assert.Equal(days, Period.DaysBetween(jar.Since, jar.EatFirstFrom));
        Assert.False(jar.IsNext(jar.EatFirstFrom.PlusDays(-1)));
        Assert.True(jar.IsNext(jar.EatFirstFrom));
    }

    [Theory]
    [InlineData(9, new[] { 1, 30 }, 252)] // two in eight weeks: nine take 36 weeks
    [InlineData(9, new[] { 0, 7, 14, 55 }, 126)]
    [InlineData(0, new[] { 0, 7 }, 0)]
    public void LastsUntil_PaceOfEightWeeks_IsThatManyDaysAhead(int jars, int[] eatenDaysAgo, int days) =>
        Assert.Equal(Today.PlusDays(days), ColdStock.LastsUntil(jars, eatenDaysAgo.Select(ago => Today.PlusDays(-ago)), Today));

    [Theory]
    [InlineData(new int[0])]
    [InlineData(new[] { 3 })]
    [InlineData(new[] { 3, 56, 100 })]
    public void LastsUntil_TooFewEatenToTell_IsNothing(int[] eatenDaysAgo) =>
        Assert.Null(ColdStock.LastsUntil(9, eatenDaysAgo.Select(ago => Today.PlusDays(-ago)), Today));

    private static ColdJar Cold(int number, string produce, double chilledDay, double? acidity)
    {
        Jar jar = Make.Jar(number);
        jar.Portions = [new Portion(produce, 0.8)];
        jar.Observations.Add(Make.Stage(JarStage.Cold, chilledDay));
        return ColdJar.Of(jar, acidity, DateTimeZone.Utc);
    }
}
