using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Occasions;
using FermentWatch.Kitchen.Tests.Doubles;

namespace FermentWatch.Kitchen.Tests.Occasions;

public class AcidOccasionsTests
{
    [Fact]
    public void Of_NeverMeasured_IsToldOnTheEveningsOfDay5AndDay7()
    {
        Jar jar = Make.Jar(1);
        // The morning round has asked already.
        Assert.Empty(FactsOf.Kinds(FactsOf.Day(5, FactsOf.Morning, [jar])));
        Assert.Empty(FactsOf.Kinds(FactsOf.Day(4, FactsOf.Evening, [jar])));
        Assert.Equal([OccasionKind.NoReadingByDay5], FactsOf.Kinds(FactsOf.Day(5, FactsOf.Evening, [jar])));
        Assert.Equal([OccasionKind.NoReadingByDay7], FactsOf.Kinds(FactsOf.Day(7, FactsOf.Evening, [jar])));
    }

    [Theory]
    [InlineData(1.0)]
    [InlineData(30.0)]
    public void Of_Day7_IsMovedByNoForecast(double acidLineDay)
    {
        // The forecast says below since day 1, or not before day 30: the day is the same.
        Jar jar = Make.Jar(1);
        var forecast = Make.Forecast(jar, acidLineDay, acidLineDay, acidLineDay, acidity: 1.1);
        Assert.Contains(OccasionKind.NoReadingByDay7, FactsOf.Kinds(FactsOf.Day(7, FactsOf.Evening, [jar], [forecast])));
        Assert.DoesNotContain(OccasionKind.NoReadingByDay7, FactsOf.Kinds(FactsOf.Day(6, FactsOf.Evening, [jar], [forecast])));
    }

    [Fact]
    public void Of_StripTooHighToCount_IsNoReading() =>
        Assert.Equal([OccasionKind.NoReadingByDay7],
        FactsOf.Kinds(FactsOf.Day(7, FactsOf.Evening, [Make.Jar(1, seen: Make.Ph(4.3, PhMethod.Strip, 6))])));

    [Fact]
    public void Of_SettledBelow_IsDueAgainAfterAWeekAndToldInTheEvening()
    {
        Jar jar = Make.Jar(1, seen: [Make.Ph(4.1, PhMethod.Meter, 5), Make.Ph(4.0, PhMethod.Meter, 6)]);
        Assert.DoesNotContain(OccasionKind.PhDue, FactsOf.Kinds(FactsOf.Day(12, FactsOf.Evening, [jar])));
        Assert.Empty(FactsOf.Kinds(FactsOf.Day(13, FactsOf.Morning, [jar])));
        Assert.Contains(OccasionKind.PhDue, FactsOf.Kinds(FactsOf.Day(13, FactsOf.Evening, [jar])));
        jar.Observations.Add(Make.Ph(3.9, PhMethod.Meter, 13));
        Assert.DoesNotContain(OccasionKind.PhDue, FactsOf.Kinds(FactsOf.Day(13, FactsOf.Evening, [jar])));
    }

    [Fact]
    public void Of_MeasuredBelow_IsGoodNewsOfTheEveningAndTheSameCauseAtTheSecondReading()
    {
        Jar jar = Make.Jar(7, seen: Make.Ph(4.1, PhMethod.Meter, 5));
        Assert.DoesNotContain(OccasionKind.PassedAcidLine, FactsOf.Kinds(FactsOf.Day(5, FactsOf.Morning, [jar])));
        Occasion first = Assert.Single(AcidOccasions.Of(FactsOf.Day(5, FactsOf.Evening, [jar])));
        Assert.Equal("Passed the acid line, measured: jar 7 (cabbage)", OccasionWords.Title([first]));
        jar.Observations.Add(Make.Ph(4.0, PhMethod.Meter, 6));
        Assert.Equal(first.Cause, Assert.Single(AcidOccasions.Of(FactsOf.Day(6, FactsOf.Evening, [jar]))).Cause);
    }

    [Theory]
    [InlineData(5)]
    [InlineData(7)]
    [InlineData(15)]
    public void Of_HouseholdThatCannotMeasure_IsToldOnceForAllItsJars(int day)
    {
        Household household = FactsOf.Household();
        household.PhTool = PhTool.Nothing;
        Jar[] jars = [.. Enumerable.Range(1, 20).Select(number => Make.Jar(number))];
        Occasion only = Assert.Single(AcidOccasions.Of(FactsOf.Day(day, FactsOf.Evening, jars, household: household)));
        Assert.Equal((OccasionKind.NotMeasuredHere, household.Id, "once"), (only.Kind, only.Subject, only.Cause));
    }

    [Fact]
    public void Of_RiseSeenAThirdTime_IsTheSameCause()
    {
        Jar jar = Make.Jar(1, seen: [Make.Ph(3.6, PhMethod.Meter, 9), Make.Ph(3.9, PhMethod.Meter, 10), Make.Ph(4.0, PhMethod.Meter, 11)]);
        Occasion second = Assert.Single(AcidOccasions.Of(FactsOf.Day(11, FactsOf.Evening, [jar])));
        jar.Observations.Add(Make.Ph(4.1, PhMethod.Meter, 12));
        Occasion third = Assert.Single(AcidOccasions.Of(FactsOf.Day(12, FactsOf.Evening, [jar])));
        Assert.Equal((OccasionKind.PhRising, second.Cause), (third.Kind, third.Cause));
    }

    [Fact]
    public void Of_OneRiseToRecheckThenASecond_AreTwoCauses()
    {
        Jar jar = Make.Jar(1, seen: [Make.Ph(3.6, PhMethod.Meter, 9), Make.Ph(3.9, PhMethod.Meter, 10)]);
        Occasion first = Assert.Single(AcidOccasions.Of(FactsOf.Day(10, FactsOf.Evening, [jar])));
        jar.Observations.Add(Make.Ph(4.0, PhMethod.Meter, 11));
        Assert.NotEqual(first.Cause, Assert.Single(AcidOccasions.Of(FactsOf.Day(11, FactsOf.Evening, [jar]))).Cause);
    }
}
