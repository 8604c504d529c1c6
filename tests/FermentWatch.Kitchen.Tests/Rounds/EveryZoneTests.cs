using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Tests.Doubles;
using FermentWatch.TestKit;
using NodaTime;
using NodaTime.TimeZones;
using Xunit.Abstractions;

namespace FermentWatch.Kitchen.Tests.Rounds;

/// <summary>
/// The years 2005 to 2026 in the zones of the tz database: exactly one round and one message on each local date, at the promised
/// local time, with the process killed between any two writings and the clock set back now and then. The promised instant is
/// worked out here anew from the zone's intervals, by Desruisseaux, "Internet Calendaring and Scheduling Core Object Specification",
/// RFC 5545, 2009, section 3.3.5: the first of two occurrences; in a gap the offset before it.
/// </summary>
public class EveryZoneTests(ITestOutputHelper output)
{
    private static readonly LocalDate First = new(2005, 1, 1), Last = new(2026, 12, 31);

    /// <summary>Gaps and folds at midnight, of half an hour, four times a year, a date that never was, and none at all.</summary>
    private static readonly string[] OfTheShortRun =
    [
        "Pacific/Apia", "Australia/Lord_Howe", "America/New_York", "Europe/Berlin", "Africa/Casablanca", "America/Havana", "America/St_Johns",
        "Asia/Beirut", "Asia/Pyongyang", "Asia/Kathmandu",
    ];

    [Fact]
    public void Rounds_TwentyTwoYears_OncePerDateAtThePromisedTime()
    {
        string[] zones = LongRun.Asked ? [.. TzdbDateTimeZoneSource.Default.CanonicalIdMap.Values.Distinct().Order(StringComparer.Ordinal)]
            : OfTheShortRun;
        int rounds = 0, kills = 0;
        // Each keeps the notices of 22 years: no more at once than can run at once.
        Parallel.For(0, zones.Length, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, number =>
        {
            (int held, int killed) = HoldAsync(DateTimeZoneProviders.Tzdb[zones[number]], new Random(number)).GetAwaiter().GetResult();
            Interlocked.Add(ref rounds, held);
            Interlocked.Add(ref kills, killed);
        });
        output.WriteLine($"{zones.Length} zones, {rounds} rounds, {kills} kills");
        Assert.True(kills > zones.Length, "hardly a kill: the chances are set wrong");
    }

    private static async Task<(int Rounds, int Kills)> HoldAsync(DateTimeZone zone, Random random)
    {
        Household household = Make.Household(zone.Id);
        // Every quarter of an hour of the small hours, where changes of the clocks lie, and the usual hour.
        household.RoundAt = random.Next(2) == 0 ? new LocalTime(7, 0) : new LocalTime(random.Next(4), 15 * random.Next(4));
        household.EveningAt = new LocalTime(22, 45);
        int kills = 0;
        bool wild = false;
        var kitchen = new KitchenInMemory(household) { Killed = () => wild && random.Next(50) == 0 && ++kills > 0 };
        kitchen.Reach("Mira");
        kitchen.Jars.Add(Make.Jar(1, packedAt: Promised(First.PlusDays(-20), household)));
        RoundPass pass = kitchen.RoundPass();
        await pass.RunAsync(Promised(First, household)!.Value - Duration.FromMinutes(1), CancellationToken.None);
        wild = true;
        for (LocalDate date = First; date <= Last; date = date.PlusDays(1))
        {
            if (Promised(date, household) is not { } due)
                continue;
            foreach (Instant now in Looks(due, random))
                pass = await RunAsync(kitchen, pass, now);
        }
        Assert.Equal([], Differences(kitchen, household));
        return (kitchen.Rounds.Count(), kills);
    }

    /// <summary>A minute before, when it is due, and now and then later with the clock set back after it.</summary>
    private static IEnumerable<Instant> Looks(Instant due, Random random)
    {
        yield return due - Duration.FromMinutes(1);
        yield return due;
        if (random.Next(20) > 0)
            yield break;
        yield return due + Duration.FromMinutes(random.Next(200));
        yield return due - Duration.FromMinutes(random.Next(60 * 30));
    }

    private static async Task<RoundPass> RunAsync(KitchenInMemory kitchen, RoundPass pass, Instant now)
    {
        while (true)
        {
            try
            {
                await pass.RunAsync(now, CancellationToken.None);
                return pass;
            }
            catch (KilledException)
            {
                pass = kitchen.RoundPass();
            }
        }
    }

    /// <summary>What is not as promised, a line each.</summary>
    private static List<string> Differences(KitchenInMemory kitchen, Household household)
    {
        ILookup<Instant, Notice> told = kitchen.Notices.Where(notice => notice.Key.StartsWith("round/", StringComparison.Ordinal))
            .ToLookup(notice => notice.DueAt);
        var rounds = kitchen.Rounds.Where(round => !round.Missed).ToDictionary(round => round.Date);
        var wrong = new List<string>();
        int dates = 0;
        for (LocalDate date = First; date <= Last; date = date.PlusDays(1))
        {
            Instant? due = Promised(date, household);
            dates += due is null ? 0 : 1;
            if (rounds.GetValueOrDefault(date)?.DueAt != due || rounds.GetValueOrDefault(date)?.OpenedAt != due)
                wrong.Add($"{household.TimeZoneId} {date:uuuu-MM-dd}: promised {due}, opened {rounds.GetValueOrDefault(date)?.OpenedAt}");
            else if (due is { } at && told[at].Count() != 1)
                wrong.Add($"{household.TimeZoneId} {date:uuuu-MM-dd}: {told[at].Count()} messages");
        }
        if (rounds.Count != dates)
            wrong.Add($"{household.TimeZoneId}: {rounds.Count} rounds on {dates} dates");
        return wrong;
    }

    /// <summary>When the household's hour is reached on a date; null on a date that never was.</summary>
    private static Instant? Promised(LocalDate date, Household household)
    {
        DateTimeZone zone = household.Zone;
        LocalDateTime wanted = date + household.RoundAt;
        Instant about = Instant.FromDateTimeUtc(DateTime.SpecifyKind(wanted.ToDateTimeUnspecified(), DateTimeKind.Utc));
        var intervals = zone.GetZoneIntervals(about - Duration.FromDays(2), about + Duration.FromDays(2)).ToList();
        if (!intervals.Exists(interval => Start(interval) < date.PlusDays(1).AtMidnight() && End(interval) > date.AtMidnight()))
            return null;
        foreach (ZoneInterval interval in intervals)
        {
            Instant candidate = About(wanted, interval.WallOffset);
            if (interval.Contains(candidate))
                return candidate;
        }
        // In a gap: by the offset of the last interval that ends before it.
        return About(wanted, intervals.Last(interval => End(interval) <= wanted).WallOffset);
    }

    private static Instant About(LocalDateTime local, Offset offset) => local.InUtc().ToInstant() - Duration.FromTicks(offset.Ticks);

    private static LocalDateTime Start(ZoneInterval interval) => interval.HasStart ? interval.IsoLocalStart : LocalDate.MinIsoValue.AtMidnight();

    private static LocalDateTime End(ZoneInterval interval) => interval.HasEnd ? interval.IsoLocalEnd : LocalDate.MaxIsoValue.AtMidnight();
}
