using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Tests.Doubles;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Rounds;

public class RoundPassTests
{
    private readonly KitchenInMemory _kitchen = new(Make.Household("UTC"));

    public RoundPassTests()
    {
        _kitchen.Reach("Ada");
        _kitchen.Reach("Mira");
        _kitchen.Jars.Add(Make.Jar(1));
    }

    [Fact]
    public async Task Run_DaysByMember_TellsWhoseDayItIs()
    {
        // 2 October 2026 is a Friday.
        _kitchen.Members.AddRange([On("Ada", Weekdays.Friday), On("Mira", Weekdays.All & ~Weekdays.Friday)]);
        Assert.Equal(["Ada"], await MorningAsync(1));
        Assert.Equal(["Mira"], await MorningAsync(2));
    }

    [Fact]
    public async Task Run_DayOfNobody_TellsEverybody()
    {
        _kitchen.Members.AddRange([On("Ada", Weekdays.Monday), On("Mira", Weekdays.Monday)]);
        Assert.Equal(["Ada", "Mira"], await MorningAsync(1));
    }

    [Fact]
    public async Task Run_HandedOver_TellsTheOtherAlone()
    {
        _kitchen.HandOvers.Add(new HandOver { Date = DateOf(1), Person = "Mira", By = "Ada" });
        Assert.Equal(["Mira"], await MorningAsync(1));
        Assert.Equal(["Ada", "Mira"], await MorningAsync(2));
    }

    [Fact]
    public async Task Run_HandedOverToSomebodyWithoutAWayToBeReached_TellsEverybody()
    {
        _kitchen.HandOvers.Add(new HandOver { Date = DateOf(1), Person = "Grandmother", By = "Ada" });
        Assert.Equal(["Ada", "Mira"], await MorningAsync(1));
    }

    [Fact]
    public async Task Run_Paused_TellsNobodyMorningOrEveningAndOpensTheRoundAllTheSame()
    {
        _kitchen.Pauses.Add(new RoundPause { Id = Guid.NewGuid(), From = DateOf(1), Until = DateOf(3), By = "Ada" });
        Assert.Empty(await MorningAsync(1));
        await RunAsync(DateOf(1) + new LocalTime(20, 0));
        Assert.Empty(_kitchen.Notices);
        await MorningAsync(2);
        Assert.Equal(["Ada", "Mira"], await MorningAsync(3));
        Assert.Equal([DateOf(0), DateOf(1), DateOf(2), DateOf(3)], _kitchen.Rounds.Select(round => round.Date));
    }

    [Fact]
    public async Task Run_QuietUntilNine_TellsThatPersonAtNine()
    {
        _kitchen.Members.Add(
            new Member("Mira", MemberRole.Adult, new Duty { Person = "Mira", QuietFrom = new LocalTime(21, 0), QuietUntil = new LocalTime(9, 0) }));
        await MorningAsync(1);
        Assert.Equal([new LocalTime(7, 0), new LocalTime(9, 0)], _kitchen.Notices.OrderBy(notice => notice.Person)
            .Select(notice => notice.DueAt.InUtc().TimeOfDay));
    }

    [Fact]
    public async Task Run_SecondEvening_TellsEverybody()
    {
        _kitchen.Members.AddRange([On("Ada", Weekdays.Friday), On("Mira", Weekdays.Saturday)]);
        await MorningAsync(1);
        await RunAsync(DateOf(1) + new LocalTime(19, 0));
        Assert.Equal(["Ada"], Evening(1));
        await RunAsync(DateOf(2) + new LocalTime(19, 0));
        Assert.Equal(["Ada", "Mira"], Evening(2));
    }

    private static Member On(string name, Weekdays days) => new(name, MemberRole.Adult, new Duty { Person = name, Days = days });

    private static LocalDate DateOf(int day) => Make.Packed.InUtc().Date.PlusDays(day);

    private IEnumerable<string> Evening(int day) => Told($"evening/{DateOf(day):uuuu-MM-dd}");

    private IEnumerable<string> Told(string occasion) =>
        _kitchen.Notices.Where(notice => notice.Key.StartsWith(occasion, StringComparison.Ordinal)).Select(notice => notice.Person).Order();

    private async Task<IEnumerable<string>> MorningAsync(int day)
    {
        if (!_kitchen.Rounds.Any())
            await RunAsync(DateOf(day) + new LocalTime(6, 0));
        await RunAsync(DateOf(day) + new LocalTime(7, 0));
        return Told($"round/{DateOf(day):uuuu-MM-dd}");
    }

    private Task<IReadOnlyList<LocalDate>> RunAsync(LocalDateTime at) =>
        _kitchen.RoundPass().RunAsync(at.InUtc().ToInstant(), CancellationToken.None);
}
