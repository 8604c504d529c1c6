using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Away;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Tests.Doubles;
using FermentWatch.Kitchen.Tests.Occasions;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Away;

/// <summary>The list on day 9 after packing for days away, counted from then.</summary>
public class BeforeYouGoTests
{
    private const int Day = 9;

    private static readonly PhMeasurement[] Below = [Make.Ph(4.0, PhMethod.Meter, 7), Make.Ph(3.9, PhMethod.Meter, 8)];

    [Fact]
    public void Needs_JarThatIsDoneWithEverything_IsNotOnTheList() =>
        Assert.Empty(Needs(1, 4, Make.Jar(1, cover: Cover.Weight, seen: Below)));

    [Fact]
    public void Needs_TightLidWhileItBubbles_NeedsSomebodyEveryDay()
    {
        AwayNeed need = Assert.Single(Needs(1, 4, Make.Jar(1, lid: Lid.Tight, seen: Below)));
        Assert.True(need.Daily);
        Assert.StartsWith("Tight lid", need.Lines[0], StringComparison.Ordinal);
        Assert.Empty(Needs(3, 6, Make.Jar(1, lid: Lid.Tight, seen: Below)));
    }

    [Theory]
    [InlineData(5, true)]
    [InlineData(6, false)]
    public void Needs_PutUpSoManyDaysBeforeLeaving_IsWarnedAboutWithinFive(int before, bool warned)
    {
        Jar jar = Make.Jar(1, packedAt: Make.Day(Day - 0.5), cover: Cover.Weight, seen: Below);
        Assert.Equal(warned, Needs(before, before + 3, jar).SelectMany(need => need.Lines)
            .Any(line => line.StartsWith("Put up within five days", StringComparison.Ordinal)));
    }

    [Fact]
    public void Needs_TastingDayWhileAway_IsTastedTheDayYouGo()
    {
        Jar jar = Make.Jar(1, cover: Cover.Weight, seen: Below);
        Assert.Equal(["Probably sour enough Wednesday, while you are away or before: taste it the day you go. The cold slows it, if it is nearly "
            + "right."],
            Assert.Single(Needs(3, 7, [jar], Make.Forecast(jar, 10, 13, 15))).Lines);
    }

    [Fact]
    public void Needs_NeverMeasuredPastDaySeven_AsksToMeasureBefore() =>
        Assert.Equal(["No reading below 4.6 counts yet: measure the pH before you go."],
        Assert.Single(Needs(1, 3, Make.Jar(1, cover: Cover.Weight))).Lines);

    [Fact]
    public void Needs_FilmSeen_IsSettledBefore() =>
        Assert.True(Assert.Single(Needs(1, 3, Make.Jar(1, cover: Cover.Weight, seen: [.. Below, Make.Sighting(SightingKind.Film, 8.5)]))).Daily);

    private static IReadOnlyList<AwayNeed> Needs(int from, int until, Jar jar) => Needs(from, until, [jar]);

    private static IReadOnlyList<AwayNeed> Needs(int from, int until, Jar[] jars, params JarForecast[] forecasts)
    {
        LocalDate today = Make.Packed.InUtc().Date.PlusDays(Day);
        return new BeforeYouGo(FactsOf.Day(Day, FactsOf.Morning, jars, forecasts), today.PlusDays(from), today.PlusDays(until)).Needs();
    }
}
