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
        Assert.Equal(Today.PlusDays(days), ColdStock.LastsUntil(jars, eatenDaysAgo.Select(ago => new EatenUp(Today.PlusDays(-ago), 1)), Today));

    [Theory]
    [InlineData(new int[0])]
    [InlineData(new[] { 3 })]
    [InlineData(new[] { 3, 56, 100 })]
    public void LastsUntil_TooFewEatenToTell_IsNothing(int[] eatenDaysAgo) =>
        Assert.Null(ColdStock.LastsUntil(9, eatenDaysAgo.Select(ago => new EatenUp(Today.PlusDays(-ago), 1)), Today));

    [Theory]
    [InlineData(2.5, new[] { 0.25, 0.25, 0.5 }, 140)] // a jar in eight weeks: two and a half take twenty
    [InlineData(0.5, new[] { 0.25, 1.0, 0.75 }, 14)]
    [InlineData(0.1, new[] { 0.5, 0.5 }, 6)]
    public void LastsUntil_EatenByPortions_CountsSharesOfJars(double jars, double[] eaten, int days) =>
        Assert.Equal(Today.PlusDays(days), ColdStock.LastsUntil(jars, eaten.Select((share, ago) => new EatenUp(Today.PlusDays(-ago), share)), Today));

    [Fact]
    public void LastsUntil_LessThanAJarInEightWeeks_TellsNoPace() =>
        Assert.Null(ColdStock.LastsUntil(3, [new(Today, 0.5), new(Today.PlusDays(-9), 0.49)], Today));

    [Fact]
    public void InOrder_OpenJar_ComesBeforeOneThatIsSourerThanWanted()
    {
        ColdJar sour = Cold(1, "cabbage", chilledDay: 31, acidity: 1.51), open = Cold(2, "cabbage", chilledDay: 40, acidity: 0.9, Make.Opened(45));
        Assert.Equal([2, 1], ColdStock.InOrder([sour, open]).Select(each => each.Jar.Number));
        Assert.Equal((new LocalDate(2026, 11, 15), 1.0), (open.OpenSince, open.LeftFraction));
        Assert.True(open.IsNext(open.Since.PlusDays(1)));
        Assert.Null(sour.OpenSince);
    }

    [Fact]
    public void EatenOf_PortionsThenFinished_AddsUpToTheJar()
    {
        Jar jar = Make.Jar(1, seen:
            [Make.Stage(JarStage.Cold, 20), Make.Portion(30, 0.25), Make.Portion(33, 0.25), Make.Went(Destination.Eaten, 40)]);
        Assert.Equal([(Day(30), 0.25), (Day(33), 0.25), (Day(40), 0.5)], Eaten(jar));
    }

    /// <summary>More portions than a jar holds are no second jar.</summary>
    [Fact]
    public void EatenOf_MoreThanTheJarHeld_IsOneJar() =>
        Assert.Equal([(Day(30), 0.75), (Day(33), 0.25)],
            Eaten(Make.Jar(1, seen: [Make.Portion(30, 0.75), Make.Portion(33, 0.75), Make.Went(Destination.Eaten, 40)])));

    [Theory]
    [InlineData(null, 1)]
    [InlineData(Destination.Eaten, 1)]
    [InlineData(Destination.GivenAway, 1)]
    [InlineData(Destination.Frozen, 0)]
    [InlineData(Destination.Canned, 0)]
    public void EatenOf_WhereItWent_CountsWhatLeftTheColdForATable(Destination? went, int entries) =>
        Assert.Equal(entries, Eaten(Make.Jar(1, seen: [Make.Stage(JarStage.Cold, 20), Make.Went(went, 40)])).Count());

    [Fact]
    public void EatenOf_ThrownOutOrOutOfTheFreezer_IsNotEatenFromTheCold()
    {
        Assert.Empty(Eaten(Make.Jar(1, seen: [Make.Stage(JarStage.ThrownOut, 20)])));
        Assert.Empty(Eaten(Make.Jar(1, seen: [Make.Went(Destination.Frozen, 20), Make.Went(Destination.Eaten, 50)])));
    }

    private static LocalDate Day(double days) => Make.Day(days).InUtc().Date;

    private static IEnumerable<(LocalDate, double)> Eaten(Jar jar) => ColdStock.EatenOf([jar], DateTimeZone.Utc).Select(each => (each.On, each.Jars));

    private static ColdJar Cold(int number, string produce, double chilledDay, double? acidity, params Observation[] seen)
    {
        Jar jar = Make.Jar(number);
        jar.Portions = [new Portion(produce, 0.8)];
        jar.Observations.Add(Make.Stage(JarStage.Cold, chilledDay));
        jar.Observations.AddRange(seen);
        return ColdJar.Of(jar, acidity, DateTimeZone.Utc);
    }
}
