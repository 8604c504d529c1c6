using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Occasions;
using FermentWatch.Kitchen.Tests.Doubles;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Occasions;

public class OccasionPassTests
{
    private readonly KitchenInMemory _kitchen = new(FactsOf.Household());

    public OccasionPassTests() => _kitchen.Reach("Ada");

    [Fact]
    public async Task Run_AlikeJars_AreOneNoticeAPerson()
    {
        _kitchen.Reach("Mira");
        _kitchen.Jars.AddRange([Make.Jar(1), Make.Jar(2), Make.Jar(3)]);
        await RunAsync(5, 20);
        Assert.Equal(["Ada: Day 5, no reading below 4.6: jars 1 to 3 (cabbage)", "Mira: Day 5, no reading below 4.6: jars 1 to 3 (cabbage)"],
            _kitchen.Notices.Select(notice => $"{notice.Person}: {notice.Title}"));
    }

    [Fact]
    public async Task Run_EveryQuarterHourOfThreeWeeks_TellsEachCauseOnce()
    {
        // Never measured: days 5 and 7, then weekly in the evening, as long as it is not measured.
        _kitchen.Jars.Add(Make.Jar(1));
        for (int quarter = 0; quarter < 21 * 96; quarter++)
            await _kitchen.OccasionPass().RunAsync(Make.Packed + Duration.FromMinutes(15 * quarter), CancellationToken.None);
        Assert.Equal(["NoReadingByDay5", "NoReadingByDay7", "PhDue"], _kitchen.Notices.OrderBy(notice => notice.DueAt)
            .Select(notice => notice.Key.Split('/')[1]));
    }

    [Fact]
    public async Task Run_MutedKind_IsPassedOverForGoodAndTheOthersAreTold()
    {
        await _kitchen.MuteAsync(OccasionKind.NoReadingByDay5, true, CancellationToken.None);
        _kitchen.Jars.Add(Make.Jar(1));
        await RunAsync(5, 19);
        await _kitchen.MuteAsync(OccasionKind.NoReadingByDay5, false, CancellationToken.None);
        await RunAsync(5, 20);
        Assert.Empty(_kitchen.Notices);
        await RunAsync(7, 20);
        Assert.Single(_kitchen.Notices);
    }

    [Fact]
    public async Task Run_NobodyToTell_TellsWhoJoinsLater()
    {
        _kitchen.Routes.Clear();
        _kitchen.Jars.Add(Make.Jar(1));
        await RunAsync(5, 20);
        _kitchen.Reach("Mira");
        await RunAsync(5, 20);
        Assert.Equal("Mira", Assert.Single(_kitchen.Notices).Person);
    }

    [Fact]
    public async Task Run_AtNight_WaitsForTheMorningRoundsHour()
    {
        _kitchen.Jars.Add(Make.Jar(1, seen: Make.Sighting(SightingKind.Film, 3.4)));
        await RunAsync(4, 3);
        Assert.Empty(_kitchen.Notices);
        await RunAsync(4, 7);
        Assert.Single(_kitchen.Notices);
    }

    [Fact]
    public async Task Run_QuietHours_AreWaitedFor()
    {
        _kitchen.Members.Add(
            new Member("Ada", MemberRole.Adult, new Duty { Person = "Ada", QuietFrom = new LocalTime(19, 30), QuietUntil = new LocalTime(9, 30) }));
        _kitchen.Jars.Add(Make.Jar(1));
        await RunAsync(5, 20);
        Notice notice = Assert.Single(_kitchen.Notices);
        Assert.Equal(At(6, 9) + Duration.FromMinutes(30), notice.NextAttemptAt);
    }

    [Fact]
    public async Task Run_AdultSawIt_TellsTheOtherAdultsAndNoChild()
    {
        _kitchen.Reach("Mira");
        _kitchen.Reach("Lena");
        _kitchen.Members.Add(FactsOf.Adult("Mira"));
        _kitchen.Members.Add(new Member("Lena", MemberRole.Child, new Duty { Person = "Lena" }));
        _kitchen.Jars.Add(Make.Jar(1, seen: Make.Sighting(SightingKind.Film, 3)));
        await RunAsync(4, 8);
        Assert.Equal(["Ada"], _kitchen.Notices.Select(notice => notice.Person));
    }

    [Fact]
    public async Task Run_KilledBeforeAndAfterTheWriting_TellsOnce()
    {
        _kitchen.Members.Add(FactsOf.Adult("Mira"));
        _kitchen.Jars.AddRange([Make.Jar(1), Make.Jar(2, seen: Make.Sighting(SightingKind.Film, 3))]);
        int steps = 0;
        _kitchen.Killed = () => steps++ is 0 or 3 or 6;
        for (int restart = 0; restart < 6; restart++)
            try
            {
                await RunAsync(5, 20);
            }
            catch (KilledException)
            {
                // It is started again.
            }
        Assert.Equal(["CloserWatch", "NoReadingByDay5"], _kitchen.Notices.Select(notice => notice.Key.Split('/')[1]).Order());
    }

    private static Instant At(int day, int hour) => (Make.Packed.InUtc().Date.PlusDays(day) + new LocalTime(hour, 0)).InUtc().ToInstant();

    private Task<int> RunAsync(int day, int hour) => _kitchen.OccasionPass().RunAsync(At(day, hour), CancellationToken.None);
}
