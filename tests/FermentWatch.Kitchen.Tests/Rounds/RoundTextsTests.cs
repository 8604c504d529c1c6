using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Tests.Doubles;
using FermentWatch.Kitchen.Tests.Golden;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Rounds;

/// <summary>Rounds as they reach people, as golden texts under tests/scenario/rounds; FERMENTWATCH_APPROVE=1 writes them anew.</summary>
public class RoundTextsTests
{
    private readonly Scenario.Tests.Golden _golden = new();
    private readonly KitchenInMemory _kitchen = new(Make.Household("UTC"));

    public RoundTextsTests() => _kitchen.Reach("Ada");

    [Fact]
    public async Task Round_DayThree_IsAsApproved()
    {
        _kitchen.Jars.AddRange([Looked(1, 2), Looked(2, 2), Make.Jar(3, Make.Cellar, lid: Lid.Tight, seen: Make.Look(2))]);
        await HoldAsync("day-3", 3);
    }

    [Fact]
    public async Task Round_TastingDay_IsAsApproved()
    {
        Jar measured = Make.Jar(1, seen: [Make.Ph(4.0, PhMethod.Meter, 7), Make.Ph(3.9, PhMethod.Meter, 9), Make.Look(9)]);
        _kitchen.Jars.AddRange([measured, Looked(2, 9)]);
        _kitchen.Forecasts[measured.Id] = Make.Forecast(measured, 8, 9.8, 13);
        await HoldAsync("tasting-day", 10);
    }

    [Fact]
    public async Task Round_NeglectedWeek_IsAsApproved()
    {
        _kitchen.Jars.AddRange([Looked(1, 5), Looked(2, 5), Make.Jar(3, Make.Cellar, lid: Lid.Tight, seen: Make.Look(5))]);
        foreach (Jar jar in _kitchen.Jars)
            _kitchen.Forecasts[jar.Id] = Make.Forecast(jar, 6, 9, 12);
        await HoldAsync("neglected-week", 13);
    }

    [Fact]
    public async Task Round_BrineBag_IsAsApproved()
    {
        _kitchen.Jars.AddRange([Make.Jar(1, cover: Cover.BrineBag, seen: Make.Look(5)), Looked(2, 5)]);
        await HoldAsync("brine-bag", 6);
    }

    [Fact]
    public async Task Round_ChildOnDuty_IsAsApproved()
    {
        _kitchen.Reach("Lena");
        _kitchen.Members.AddRange(
        [
            new Member("Ada", MemberRole.Adult, new Duty { Person = "Ada", Days = Weekdays.Saturday }),
            new Member("Lena", MemberRole.Child, new Duty { Person = "Lena", Days = Weekdays.Thursday }),
        ]);
        Jar watched = Make.Jar(4, seen: [Make.Sighting(SightingKind.Film, 6), Make.Look(6.2)]);
        _kitchen.Jars.AddRange([Looked(1, 6), Looked(2, 6), Make.Jar(3, Make.Cellar, lid: Lid.Tight, seen: Make.Look(6)), watched]);
        await HoldAsync("child-on-duty", 7);
    }

    [Fact]
    public async Task Evening_FirstAndSecondDay_AreAsApproved()
    {
        _kitchen.Jars.AddRange([Looked(1, 2), Looked(2, 2), Make.Jar(3, Make.Cellar, seen: Make.Look(3))]);
        await HoldAsync("evening-first-day", 3, new LocalTime(19, 1));
        await HoldAsync("evening-second-day", 4, new LocalTime(19, 1));
    }

    private static Jar Looked(int number, double day) => Make.Jar(number, seen: Make.Look(day));

    private async Task HoldAsync(string name, int day, LocalTime? time = null)
    {
        LocalDate date = Make.Packed.InUtc().Date.PlusDays(day);
        var before = _kitchen.Notices.Select(notice => notice.Key).ToHashSet();
        if (before.Count == 0)
            await _kitchen.RoundPass().RunAsync((date + new LocalTime(6, 0)).InUtc().ToInstant(), CancellationToken.None);
        await _kitchen.RoundPass().RunAsync((date + (time ?? new LocalTime(7, 0))).InUtc().ToInstant(), CancellationToken.None);
        var told = _kitchen.Notices.Where(notice => !before.Contains(notice.Key))
            .Where(notice => time is null || notice.Key.StartsWith("evening", StringComparison.Ordinal)).OrderBy(notice => notice.Person).ToList();
        Assert.NotEmpty(told);
        foreach (Notice notice in told)
            Aloud.Hold(notice.Title, notice.Body);
        _golden.Hold($"rounds/{name}.txt", string.Join("\n", told.Select(notice => $"To {notice.Person}\n{notice.Title}\n{notice.Body}\n")));
        _golden.Settle();
    }
}
