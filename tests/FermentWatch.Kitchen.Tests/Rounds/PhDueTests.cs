using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Tests.Doubles;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Rounds;

/// <summary>Daily until below 4.6, then weekly: Univ. of Minnesota Extension 2021, as in the published guidance table.</summary>
public class PhDueTests
{
    [Fact]
    public void On_NeverMeasured_AsksOnDays5And7ThenWeekly() =>
        Assert.Equal([5, 7, 14, 21, 28], DueDays(30));

    [Fact]
    public void On_MeasuredAbove_AsksDailyFromTheNextDay() =>
        Assert.Equal([4, 5, 6, 7, 8], DueDays(8, Make.Ph(5.1, PhMethod.Meter, 3)).Where(day => day > 2));

    [Fact]
    public void On_OneReadingBelow_AsksForTheSecondDaily() =>
        Assert.Equal([6, 7, 8], DueDays(8, Make.Ph(4.1, PhMethod.Meter, 5)).Where(day => day > 4));

    [Fact]
    public void On_Settled_AsksWeekly() =>
        Assert.Equal([13, 14, 15], DueDays(15, Make.Ph(4.1, PhMethod.Meter, 5), Make.Ph(4.0, PhMethod.Meter, 6)).Where(day => day > 5));

    [Fact]
    public void On_TooNearTheLine_AsksDailyFromTheNextDay() =>
        Assert.Equal([9, 10, 11], DueDays(11, Make.Ph(4.5, PhMethod.Meter, 8)).Where(day => day > 7));

    private static IEnumerable<int> DueDays(int until, params PhMeasurement[] readings)
    {
        AcidLineReport line = AcidLine.Report(Make.Jar(1), readings, DateTimeZone.Utc);
        LocalDate packed = Make.Day(0).InUtc().Date;
        return Enumerable.Range(0, until + 1).Where(day => PhDue.On(packed.PlusDays(day), day, line, DateTimeZone.Utc));
    }
}
