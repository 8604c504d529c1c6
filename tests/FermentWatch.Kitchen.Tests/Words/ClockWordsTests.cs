using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Tests.Doubles;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Words;

public class ClockWordsTests
{
    [Theory]
    [InlineData(0, 0, "00:00", "12:00 am")]
    [InlineData(0, 5, "00:05", "12:05 am")]
    [InlineData(7, 15, "07:15", "7:15 am")]
    [InlineData(12, 0, "12:00", "12:00 pm")]
    [InlineData(23, 59, "23:59", "11:59 pm")]
    public void Of_TimeOfDay_ReadsAsTheHouseholdReadsIt(int hour, int minute, string whole, string halved)
    {
        Assert.Equal(whole, ClockWords.Of(new LocalTime(hour, minute), ClockFace.TwentyFourHours));
        Assert.Equal(halved, ClockWords.Of(new LocalTime(hour, minute), ClockFace.TwelveHours));
    }

    [Fact]
    public void WithDate_Instant_IsOfTheHouseholdsZone() =>
        Assert.Equal("2 October 2026 01:30", ClockWords.WithDate(Instant.FromUtc(2026, 10, 1, 23, 30), Make.Household("Europe/Vienna")));

    [Fact]
    public void WeekFromSunday_HasEachDayOnceInTheOrderOfThatWeek() =>
        Assert.Equal(
            [Weekdays.Sunday, Weekdays.Monday, Weekdays.Tuesday, Weekdays.Wednesday, Weekdays.Thursday, Weekdays.Friday, Weekdays.Saturday],
            WeekdaySets.From(IsoDayOfWeek.Sunday));
}
