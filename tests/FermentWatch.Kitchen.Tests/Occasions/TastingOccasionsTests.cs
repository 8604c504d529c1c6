using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Occasions;
using FermentWatch.Kitchen.Tests.Doubles;

namespace FermentWatch.Kitchen.Tests.Occasions;

public class TastingOccasionsTests
{
    private static readonly Jar Measured = Make.Jar(1, seen: [Make.Ph(4.0, PhMethod.Meter, 5), Make.Ph(3.9, PhMethod.Meter, 9.2)]);

    [Fact]
    public void Of_ExpectedDayReachedUntasted_IsGoodNewsUntilItIsADecisionOfTheRound()
    {
        var forecast = Make.Forecast(Measured, 8, 10.2, 12);
        Assert.DoesNotContain(OccasionKind.TargetReached, FactsOf.Kinds(FactsOf.Day(9, FactsOf.Morning, [Measured], [forecast])));
        Assert.Contains(OccasionKind.TargetReached, FactsOf.Kinds(FactsOf.Day(10, FactsOf.Morning, [Measured], [forecast])));
        Assert.DoesNotContain(OccasionKind.PastTarget, FactsOf.Kinds(FactsOf.Day(17, FactsOf.Morning, [Measured], [forecast])));
        Assert.DoesNotContain(OccasionKind.TargetReached, FactsOf.Kinds(FactsOf.Day(17, FactsOf.Morning, [Measured], [forecast])));
    }

    [Fact]
    public void Of_TastedNotYetYesterday_LeavesTheForecastUnsaid()
    {
        Jar jar = Make.Jar(1, seen: Make.Taste(TasteVerdict.NotYet, 12));
        Assert.DoesNotContain(OccasionKind.TargetReached, FactsOf.Kinds(FactsOf.Day(13, FactsOf.Morning, [jar], [Make.Forecast(jar, 8, 10, 12)])));
    }

    [Fact]
    public void Of_TastedRight_IsToldOnTheNextMorningWhileItStandsInTheWarm()
    {
        Jar jar = Make.Jar(1, seen: Make.Taste(TasteVerdict.Right, 12));
        Assert.DoesNotContain(OccasionKind.TargetReached, FactsOf.Kinds(FactsOf.Day(12, FactsOf.Evening, [jar])));
        Assert.Contains(OccasionKind.TargetReached, FactsOf.Kinds(FactsOf.Day(13, FactsOf.Morning, [jar])));
        jar.Observations.Add(Make.Stage(JarStage.Cold, 12.5));
        Assert.DoesNotContain(OccasionKind.TargetReached, FactsOf.Kinds(FactsOf.Day(13, FactsOf.Morning, [jar])));
    }

    [Fact]
    public void Of_JarOnTheCloserWatch_IsNotTasted()
    {
        Jar jar = Make.Jar(1, seen: Make.Sighting(SightingKind.Film, 10));
        Assert.DoesNotContain(OccasionKind.TargetReached, FactsOf.Kinds(FactsOf.Day(11, FactsOf.Morning, [jar], [Make.Forecast(jar, 8, 10.2, 13)])));
    }
}
