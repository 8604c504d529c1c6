using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.LookingBack;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Tests.Doubles;

namespace FermentWatch.Kitchen.Tests.LookingBack;

public class ForetoldTests
{
    [Theory]
    [InlineData(10.0, 20.0, 9.0, 12.0, ForetoldOutcome.Within)]
    [InlineData(10.0, 20.0, 19.0, 22.0, ForetoldOutcome.Within)] // somewhere between day 19 and 22
    [InlineData(10.0, 20.0, 21.0, 25.0, ForetoldOutcome.CameLater)]
    [InlineData(10.0, 20.0, 4.0, 9.0, ForetoldOutcome.CameSooner)]
    [InlineData(10.0, null, 40.0, 50.0, ForetoldOutcome.Within)]
    [InlineData(null, null, 40.0, 50.0, ForetoldOutcome.CameSooner)]
    public void OfTasting_BetweenNotYetAndRight_IsWithinWhereTheSpanMeetsIt(double? early, double? late, double notYet, double right,
        ForetoldOutcome outcome)
    {
        Jar jar = Make.Jar(1);
        jar.Observations.AddRange(
            [Make.Taste(TasteVerdict.NotYet, notYet), Make.Taste(TasteVerdict.Right, right), Make.Taste(TasteVerdict.PastIt, right + 9)]);
        Foretold foretold = Foretold.OfTasting(jar, [Mark(jar, 1, early, late)])!;
        Assert.Equal((outcome, notYet, right), (foretold.Outcome, Math.Round(foretold.NotYetDay, 6), Math.Round(foretold.FoundDay, 6)));
    }

    [Fact]
    public void OfTasting_MarksOfManyDays_TakesTheLastOfTheFirstThree()
    {
        Jar jar = Make.Jar(1);
        jar.Observations.Add(Make.Taste(TasteVerdict.Right, 15));
        Assert.Equal(11, Foretold.OfTasting(jar, [Mark(jar, 1, 10, 20), Mark(jar, 2.9, 11, 20), Mark(jar, 9, 14, 16)])!.EarlyDay);
        Assert.Equal(14, Foretold.OfTasting(jar, [Mark(jar, 9, 14, 16)])!.EarlyDay);
    }

    [Fact]
    public void OfTasting_NothingForetoldBeforeOrNeverRight_IsNothing()
    {
        Jar jar = Make.Jar(1);
        jar.Observations.Add(Make.Taste(TasteVerdict.Nearly, 12));
        Assert.Null(Foretold.OfTasting(jar, [Mark(jar, 1, 10, 20)]));
        jar.Observations.Add(Make.Taste(TasteVerdict.Right, 15));
        Assert.Null(Foretold.OfTasting(jar, []));
        Assert.Null(Foretold.OfTasting(jar, [Mark(jar, 15.1, 10, 20)]));
    }

    [Fact]
    public void OfLine_OnlyReadingsThatCount_AreHeldAgainstIt()
    {
        Jar jar = Make.Jar(1);
        jar.Observations.AddRange([Make.Ph(5.2, PhMethod.Meter, 2), Make.Ph(4.5, PhMethod.Meter, 3), Make.Ph(4.2, PhMethod.Meter, 6)]);
        ForecastMark mark = Mark(jar, 1, 10, 20) with { AcidLine = new PassageDays(1, 2, 4) };
        Foretold foretold = Foretold.OfLine(jar, [mark])!;
        Assert.Equal((2d, 6d, ForetoldOutcome.Within), (Math.Round(foretold.NotYetDay, 6), Math.Round(foretold.FoundDay, 6), foretold.Outcome));
        Assert.Null(Foretold.OfTasting(jar, [mark]));
    }

    private static ForecastMark Mark(Jar jar, double day, double? early, double? late) =>
        new(jar.Id, Make.Day(day), "2", default, new PassageDays(early, (early + late) / 2, late));
}
