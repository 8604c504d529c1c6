using System.Globalization;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.TestKit;
using NodaTime;
using Xunit.Abstractions;

namespace FermentWatch.Scenario.Tests.Yearly;

/// <summary>
/// One round on each local date at the promised local time, over both daylight-saving changes, with restarts and kills: told to
/// a real HTTP receiver and to Debian's mosquitto_sub. The short run takes the two zones with most to stumble over, steps through the days
/// around each change only, and jumps over the rest as an outage would.
/// </summary>
public sealed class YearOfMorningsTests(ITestOutputHelper output)
{
    private const int Days = 400;
    private const int DaysAround = 1;
    private const int DaysOfTheShortRun = 340;

    /// <summary>But in one zone, where one jar stands all the time.</summary>
    private const int DaysOfAJar = 40;

    [LongFact]
    public Task Rounds_NewYorkAtAnHourOfTheFold_OncePerDate() =>
        HoldAsync(ZoneTable.NewYork, new LocalTime(1, 30), new LocalDate(2026, 3, 1), seed: 11);

    [LongFact]
    public Task Rounds_BerlinAtAnHourOfGapAndFold_OncePerDate() =>
        HoldAsync(ZoneTable.Berlin, new LocalTime(2, 30), new LocalDate(2026, 3, 1), seed: 4);

    [LongFact]
    public Task Rounds_TokyoWithoutDaylightSaving_OncePerDate() =>
        HoldAsync(ZoneTable.Tokyo, new LocalTime(7, 0), new LocalDate(2026, 3, 1), seed: 36);

    [Fact]
    public Task Rounds_LordHoweAtAnHourOfItsHalfHourGap_OncePerDate() =>
        HoldAsync(ZoneTable.LordHowe, new LocalTime(2, 15), new LocalDate(2026, 3, 1), seed: 33);

    [Fact]
    public Task Rounds_SamoaWithItsMissingDay_OncePerDateThatWas() =>
        HoldAsync(ZoneTable.Apia, new LocalTime(3, 30), new LocalDate(2011, 3, 1), seed: 41);

    private async Task HoldAsync(ZoneTable zone, LocalTime time, LocalDate first, int seed)
    {
        long start = TimeProvider.System.GetTimestamp();
        var dates = Enumerable.Range(0, Days).Select(first.PlusDays).Where(date => LongRun.Asked || IsAround(zone, first, date)).ToList();
        await using SteppedYear year = await SteppedYear.StartAsync(zone, time, first, LongRun.Asked ? 0.02 : 0.25, seed);
        foreach (LocalDate date in dates)
        {
            await year.DayAsync(date);
            if (zone != ZoneTable.Tokyo && Period.DaysBetween(first, date) % DaysOfAJar == DaysOfAJar - 1)
                await year.NextJarAsync();
        }

        Assert.True(year.Stops + year.Kills > 0, "no restart fell into the days: another seed would be right");
        Report(zone, time, year, TimeProvider.System.GetElapsedTime(start));
        foreach (string occasion in (string[])["round/", "evening/"])
        {
            Assert.Equal(year.Dates, DatesOf(year.Webhooks(occasion)).Order());
            Assert.Equal(year.Dates, DatesOf(year.Messages(occasion)).Order());
        }
        IReadOnlyList<Round> rounds = await year.StoredRoundsAsync();
        Assert.Equal(year.Dates, rounds.Where(round => !round.Missed).Select(round => round.Date));
        Assert.DoesNotContain(rounds, round => zone.At(round.Date, time) is null);
        Assert.All(rounds, round => Assert.Equal(zone.At(round.Date, time), round.DueAt));
    }

    private static bool IsAround(ZoneTable zone, LocalDate first, LocalDate date) =>
        date < first.PlusDays(DaysOfTheShortRun)
        && zone.DatesOfChange().Append(first.PlusDays(DaysAround)).Any(change => Math.Abs(Period.DaysBetween(change, date)) <= DaysAround);

    private static IEnumerable<LocalDate> DatesOf(IReadOnlyDictionary<string, int> keys) =>
        keys.Keys.Select(key => NodaTime.Text.LocalDatePattern.Iso.Parse(key.Split('/')[1]).GetValueOrThrow());

    private void Report(ZoneTable zone, LocalTime time, SteppedYear year, TimeSpan took)
    {
        string Counts(IReadOnlyDictionary<string, int> keys) => string.Create(CultureInfo.InvariantCulture, $"{keys.Values.Sum()} of {keys.Count}");
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{zone.Name} at {time:HH:mm}: {year.Dates.Count} dates, {year.Steps} steps, {year.Stops} stops, {year.Kills} kills; rounds by webhook "
            + $"{Counts(year.Webhooks("round/"))}, ")
            + string.Create(CultureInfo.InvariantCulture,
            $"by mosquitto_sub {Counts(year.Messages("round/"))}; evenings {Counts(year.Webhooks("evening/"))} and "
            + $"{Counts(year.Messages("evening/"))}; {took.TotalSeconds:0} s, ")
            + string.Create(CultureInfo.InvariantCulture,
            $"processor {year.StepTime.TotalMilliseconds / year.Steps:0} ms a step, "
            + $"{year.StartTime.TotalMilliseconds / (year.Stops + year.Kills):0} ms a start"));
    }
}
