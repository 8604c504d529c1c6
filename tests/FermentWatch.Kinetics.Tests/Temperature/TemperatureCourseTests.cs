using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Kinetics.Tests.Temperature;

public class TemperatureCourseTests
{
    [Fact]
    public void FromSteps_Gap_IsFilledFromTheRoomAndWider()
    {
        var steps = Enumerable.Range(0, 4 * 96).Select(i => TemperatureStep.Room(i is >= 200 and < 240 ? null : 20 + Math.Sin(2 * Math.PI * i / 96)))
            .ToArray();
        TemperatureCourse course = TemperatureCourse.FromSteps(steps, TypicalRoom.Usual);
        Assert.InRange(course[220].Celsius!.Value, 19, 21);
        Assert.True(course[220].SpreadCelsius > course[100].SpreadCelsius);
        Assert.Contains("10 h", Assert.Single(course.Remarks), StringComparison.Ordinal);
    }

    /// <summary>Gaps early and late, long and short, and of a sensor that reports by the hour.</summary>
    [Fact]
    public void FromSteps_GapThatIsOver_IsFilledAsItWasWhateverFollows()
    {
        TemperatureStep[] steps = [.. Enumerable.Range(0, 40 * 96).Select(i => TemperatureStep.Room(
            i is >= 30 and < 60 or >= 400 and < 800 || (i > 1500 && i % 4 != 0)
                ? null
                : 19 + (2 * Math.Sin(2 * Math.PI * i / 96)) + (0.05 * i / 96)))];
        TemperatureCourse whole = TemperatureCourse.FromSteps(steps, TypicalRoom.Usual);
        foreach (int days in new[] { 3, 11, 12, 17, 18, 25, 39 })
        {
            TemperatureCourse until = TemperatureCourse.FromSteps(steps[..(days * 96)], TypicalRoom.Usual);
            // A gap in the first two days is settled two days after it; any other as soon as it is over.
            int settled = (days * 96) - (days == 3 ? 2 * 96 : 4);
            Assert.All(Enumerable.Range(0, settled), i => Assert.Equal(whole[i], until[i]));
        }
    }

    [Fact]
    public void FromSteps_NothingMeasured_IsTheTypicalRoom()
    {
        TemperatureCourse course = TemperatureCourse.FromSteps([TemperatureStep.Room(null), TemperatureStep.Room(null)], TypicalRoom.Cool);
        Assert.Equal(15, course[0].Celsius);
        Assert.True(course[0].SpreadCelsius >= TypicalRoom.Cool.SpreadCelsius);
    }

    [Fact]
    public void FromReadings_OutOfRangeAndDisorder_AreLeftOutAndPutRight()
    {
        TimedTemperature[] readings = [new(0.5, 20), new(0.0, 18), new(0.25, 85), new(0.25, 19), new(1, double.NaN), new(1, -127)];
        TemperatureCourse course = TemperatureCourse.FromReadings(readings, TypicalRoom.Usual);
        Assert.Equal(18, course[0].Celsius);
        Assert.Equal(19, course[24].Celsius);
        Assert.Equal(20, course[48].Celsius);
        Assert.Contains(course.Remarks, remark => remark.StartsWith("3 temperatures", StringComparison.Ordinal));
    }

    [Fact]
    public void Then_PlannedMove_StartsTheOtherPlaceOnItsDay()
    {
        TemperatureCourse course = TemperatureCourse.Constant(21).Then(3, TemperatureCourse.Constant(4));
        Assert.Equal(21, course[(3 * 96) - 1].Celsius);
        Assert.Equal(4, course[3 * 96].Celsius);
        Assert.All(Enumerable.Range(3 * 96, 60 * 96), i => Assert.Equal(4, course[i].Celsius));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(46)]
    [InlineData(-6)]
    public void Constant_OutOfRange_NamesIt(double celsius) =>
        Assert.Equal("celsius", Assert.Throws<ArgumentOutOfRangeException>(() => TemperatureCourse.Constant(celsius)).ParamName);

    /// <summary>About 2 h for a quart jar, 6 h for a crock of 5 gallons: heat capacity over surface x 8 to 10 W/m2K.</summary>
    [Theory]
    [InlineData(0.95, 1.8, 2.4)]
    [InlineData(18.9, 5.2, 6.6)]
    public void TimeConstantHours_KnownVessels_AreAsReckoned(double litres, double low, double high) =>
        Assert.InRange(JarLag.TimeConstantHours(litres), low, high);

    [Fact]
    public void Ahead_SteadyDays_GoOnWithAGrowingSpread()
    {
        double?[] past = [.. Enumerable.Range(0, 21 * 96).Select(i => (double?)(19 + (2 * Math.Sin(2 * Math.PI * i / 96))))];
        TemperatureStep[] ahead = RoomOutlook.Learn(past, TypicalRoom.Usual).Ahead(96 * 5);
        for (int i = 0; i < ahead.Length; i++)
            Assert.Equal(19 + (2 * Math.Sin(2 * Math.PI * i / 96)), ahead[i].Celsius!.Value, 0.3);
        Assert.True(ahead[^1].SpreadCelsius > ahead[0].SpreadCelsius);
    }

    [Fact]
    public void Ahead_ColderToday_DriftsBackToTheRoomsOwnMean()
    {
        double?[] past = [.. Enumerable.Range(0, 21 * 96).Select(i => (double?)(i < 20 * 96 ? 20 : 16))];
        TemperatureStep[] ahead = RoomOutlook.Learn(past, TypicalRoom.Usual).Ahead(96 * 10);
        Assert.InRange(ahead[0].Celsius!.Value, 15.5, 17.5);
        Assert.InRange(ahead[^1].Celsius!.Value, 18.5, 20.5);
    }

    [Fact]
    public void Ahead_NothingKnown_IsTheTypicalRoomWidely()
    {
        TemperatureStep[] ahead = RoomOutlook.Learn([], TypicalRoom.Warm).Ahead(96);
        Assert.Equal(25, ahead[^1].Celsius);
        Assert.True(ahead[^1].SpreadCelsius > 1);
    }
}
