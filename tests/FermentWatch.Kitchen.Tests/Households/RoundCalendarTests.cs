using FermentWatch.Kitchen.Households;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Households;

/// <summary>Gap and fold after RFC 5545 (Desruisseaux 2009), section 3.3.5; zone rules from the tz database in NodaTime.</summary>
public class RoundCalendarTests
{
    [Fact]
    public void At_HourInTheSpringGap_ComesLaterByTheGap() =>
        Assert.Equal(Instant.FromUtc(2026, 3, 29, 1, 30), RoundCalendar.At(new LocalDate(2026, 3, 29), new LocalTime(2, 30), Zone("Europe/Vienna")));

    [Fact]
    public void At_HourInTheAutumnFold_IsTheFirst() =>
        Assert.Equal(Instant.FromUtc(2026, 10, 25, 0, 30),
        RoundCalendar.At(new LocalDate(2026, 10, 25), new LocalTime(2, 30), Zone("Europe/Vienna")));

    [Fact]
    public void At_DateTheZoneNeverHad_IsNull()
    {
        DateTimeZone apia = Zone("Pacific/Apia");
        Assert.Null(RoundCalendar.At(new LocalDate(2011, 12, 30), new LocalTime(7, 0), apia));
        Assert.NotNull(RoundCalendar.At(new LocalDate(2011, 12, 29), new LocalTime(7, 0), apia));
        Assert.NotNull(RoundCalendar.At(new LocalDate(2011, 12, 31), new LocalTime(7, 0), apia));
    }

    [Fact]
    public void Exists_MidnightSkippedByDaylightSaving_TheDateIsThere() =>
        // Beirut's clocks go from 00:00 to 01:00.
        Assert.True(RoundCalendar.Exists(new LocalDate(2022, 3, 27), Zone("Asia/Beirut")));

    [Fact]
    public void EndOf_DateBeforeOneThatNeverWas_IsTheStartOfTheNextThatWas() =>
        Assert.Equal(Instant.FromUtc(2011, 12, 30, 10, 0), RoundCalendar.EndOf(new LocalDate(2011, 12, 29), Zone("Pacific/Apia")));

    [Fact]
    public void EndOf_MidnightSkippedByDaylightSaving_IsTheChange() =>
        Assert.Equal(Instant.FromUtc(2022, 3, 26, 22, 0), RoundCalendar.EndOf(new LocalDate(2022, 3, 26), Zone("Asia/Beirut")));

    [Theory]
    [InlineData("Europe/Vienna", 2, 30)]
    [InlineData("America/Phoenix", 7, 0)]
    [InlineData("Australia/Lord_Howe", 2, 15)]
    [InlineData("Pacific/Apia", 7, 0)]
    [InlineData("Asia/Beirut", 0, 30)]
    public void DueAfter_EightHundredDays_EveryDateOnceAndInOrder(string zoneName, int hour, int minute)
    {
        DateTimeZone zone = Zone(zoneName);
        var first = new LocalDate(2011, 1, 1);
        Instant end = first.PlusDays(800).AtStartOfDayInZone(zone).ToInstant();
        var due = RoundCalendar.DueAfter(first.PlusDays(-1), new LocalTime(hour, minute), zone, end).ToList();
        var expected = Enumerable.Range(0, 800).Select(day => first.PlusDays(day))
            .Where(date => zoneName != "Pacific/Apia" || date != new LocalDate(2011, 12, 30));
        Assert.Equal(expected, due.Select(entry => entry.Date));
        Assert.All(due.Zip(due.Skip(1)), pair => Assert.True(pair.First.DueAt < pair.Second.DueAt));
    }

    private static DateTimeZone Zone(string name) => DateTimeZoneProviders.Tzdb[name];
}
