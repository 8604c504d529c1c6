using System.Text;
using FermentWatch.Kitchen.Calendar;
using FermentWatch.Kitchen.Households;
using FermentWatch.Notices.Feeds;
using Ical.Net;
using Ical.Net.CalendarComponents;
using NodaTime;

namespace FermentWatch.Notices.Tests.Feeds;

/// <summary>The file as Ical.Net reads it back, and held against what RFC 5545 (Desruisseaux 2009) asks for.</summary>
public sealed class CalendarFileTests
{
    private static readonly Household Kitchen =
        new() { Id = new Guid("33333333-3333-3333-3333-333333333333"), Name = "Number Nine", TimeZoneId = "Europe/Vienna" };
    private static readonly Guid Jar = new("44444444-4444-4444-4444-444444444444");
    private static readonly Instant Revised = Instant.FromUtc(2026, 10, 23, 4, 45);
    private static readonly Uri Root = new("https://kitchen.example.org");

    /// <summary>More than 75 octets, of which the letters beyond ASCII take two and the last sign four.</summary>
    private const string LongName = "Weißkraut, „süß; sauer“ von Großmutters großem Küchenbalkon über dem Gärtchen, fünfte Füllung 🥬";

    [Fact]
    public void Of_SeveralDays_IsReadBackAsItWas()
    {
        Calendar read = Calendar.Load(new CalendarFile().Of(Days(), Root))!;
        Assert.Equal(("2.0", "-//FermentWatch//Calendar of the kitchen//EN"), (read.Version, read.ProductId));
        CalendarEvent taste = Assert.Single(read.Events);
        Assert.Equal(($"taste-{Jar}", $"Taste jar 3: {LongName}", true), (taste.Uid, taste.Summary, taste.IsAllDay));
        Assert.Equal((new DateOnly(2026, 10, 27), new DateOnly(2026, 10, 28)), (taste.Start!.Date, taste.End!.Date));
        Assert.Equal("https://kitchen.example.org/jars/3", taste.Url!.ToString());
        Assert.Equal(7, read.Todos.Count);
        Todo first = read.Todos[0]!;
        Assert.Equal(("Fri 23 Oct: 3 jars, one minute", "Under brine? kitchen counter 1 to 3\nOpen: 2"), (first.Summary, first.Description));
        Assert.Equal("round-2026-10-23-33333333-3333-3333-3333-333333333333", first.Uid);
    }

    [Fact]
    public void Of_AnyText_IsFoldedAt75OctetsBetweenCharacters()
    {
        byte[] file = Encoding.UTF8.GetBytes(new CalendarFile().Of(Days(), Root));
        string text = new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(file);
        Assert.EndsWith("END:VCALENDAR\r\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', text.Replace("\r\n", "", StringComparison.Ordinal));
        // Section 3.1: lines of text should not be longer than 75 octets, excluding the line break.
        foreach (string line in text.Split("\r\n"))
            Assert.True(Encoding.UTF8.GetByteCount(line) <= 75, $"{Encoding.UTF8.GetByteCount(line)} octets: {line}");
        Assert.Contains("\r\n ", text, StringComparison.Ordinal);
        Assert.DoesNotContain('\uFFFD', text);
        string unfolded = text.Replace("\r\n ", "", StringComparison.Ordinal);
        // Section 3.3.11: commas, semicolons and line breaks within a text are escaped.
        Assert.Contains("SUMMARY:Taste jar 3: Weißkraut\\, „süß\\; sauer“ von", unfolded, StringComparison.Ordinal);
        Assert.Contains("DESCRIPTION:Under brine? kitchen counter 1 to 3\\nOpen: 2", unfolded, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_Components_CarryWhatIsRequired()
    {
        string text = Unfolded(new CalendarFile().Of(Days(), Root));
        // Sections 3.6.1 and 3.6.2: UID and DTSTAMP, the latter in UTC (3.8.7.2).
        foreach (string kind in new[] { "VEVENT", "VTODO" })
            foreach (string component in Blocks(text, kind))
            {
                Assert.Equal(1, Count(component, "\nUID:"));
                Assert.Matches("\nDTSTAMP:[0-9]{8}T[0-9]{6}Z\r", component);
            }
        Assert.Equal(8, Blocks(text, "VEVENT").Concat(Blocks(text, "VTODO")).Select(component => component.Split("UID:")[1].Split('\r')[0])
            .Distinct().Count());
        Assert.Contains("\nDTSTART;VALUE=DATE:20261027\r", text, StringComparison.Ordinal);
        Assert.Contains("\nDTEND;VALUE=DATE:20261028\r", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_RoundsThatWait_HaveAnAlarmWhenTheyAreDue()
    {
        string text = Unfolded(new CalendarFile().Of(Days(), Root));
        // Section 3.6.6: a DISPLAY alarm has ACTION, TRIGGER and DESCRIPTION once each; RELATED=END needs a DUE (3.8.6.3).
        Assert.All(Blocks(text, "VALARM"), alarm =>
        {
            Assert.Contains("\nACTION:DISPLAY\r", alarm, StringComparison.Ordinal);
            Assert.Matches("\nTRIGGER;RELATED=END:(PT0S|P0D)\r", alarm);
            Assert.Equal(1, Count(alarm, "\nDESCRIPTION:"));
        });
        Calendar read = Calendar.Load(text)!;
        Assert.Equal([0, 1, 1, 1, 1, 1, 1], read.Todos.Select(todo => todo.Alarms.Count));
        Assert.Equal(("COMPLETED", 100), (read.Todos[0]!.Status, read.Todos[0]!.PercentComplete));
        Assert.Equal(Revised.ToDateTimeUtc(), read.Todos[0]!.Completed!.AsUtc);
        Assert.Equal("NEEDS-ACTION", read.Todos[1]!.Status);
    }

    [Theory]
    [InlineData("Europe/Vienna", 2026, 10, 23, 5, 6)]
    [InlineData("Europe/Vienna", 2026, 3, 26, 6, 5)]
    [InlineData("America/Chicago", 2026, 10, 30, 12, 13)]
    public void Of_WeekWithAChangeOfTheClocks_IsDueAtTheHouseholdsHourOnEachDay(string zoneId, int year, int month, int day, int utcHourBefore,
        int utcHourAfter)
    {
        var household = new Household { Id = Kitchen.Id, Name = "x", TimeZoneId = zoneId };
        Calendar read = Calendar.Load(new CalendarFile()
            .Of(new ComingDays(household, [], Rounds(household, new LocalDate(year, month, day))), null))!;
        Assert.All(read.Todos, todo => Assert.Equal(
            new LocalTime(7, 0), Instant.FromDateTimeUtc(DateTime.SpecifyKind(todo.Due!.AsUtc, DateTimeKind.Utc)).InZone(household.Zone).TimeOfDay));
        Assert.Equal((utcHourBefore, utcHourAfter), (read.Todos[0]!.Due!.AsUtc.Hour, read.Todos[^1]!.Due!.AsUtc.Hour));
        Assert.All(read.Todos, todo => Assert.True(todo.Due!.IsUtc));
    }

    [Fact]
    public void Of_SameDaysTwice_GivesTheSameBytes() => Assert.Equal(new CalendarFile().Of(Days(), Root), new CalendarFile().Of(Days(), Root));

    private static ComingDays Days() => new(
        Kitchen,
        [new ComingTaste(Jar, 3, LongName, "kitchen counter", new LocalDate(2026, 10, 27), "First taste, then daily until it is right.", Revised)],
        Rounds(Kitchen, new LocalDate(2026, 10, 23)));

    private static IReadOnlyList<ComingRound> Rounds(Household household, LocalDate first) => [.. Enumerable.Range(0, 7).Select(day =>
    {
        LocalDate date = first.PlusDays(day);
        return new ComingRound(date, RoundCalendar.At(date, household.RoundAt, household.Zone)!.Value,
            string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{date:ddd d MMM}: 3 jars, one minute"),
            "Under brine? kitchen counter 1 to 3\nOpen: 2", day == 0 ? Revised : null, Revised);
    })];

    private static string Unfolded(string file) => file.Replace("\r\n ", "", StringComparison.Ordinal);

    private static IEnumerable<string> Blocks(string text, string kind) =>
        text.Split($"BEGIN:{kind}\r").Skip(1).Select(block => block.Split($"END:{kind}\r")[0])
            .Select(block => kind == "VALARM" ? block : block.Split("BEGIN:VALARM\r")[0]);

    private static int Count(string text, string part) => text.Split(part).Length - 1;
}
