using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Tests.Doubles;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Rounds;

public class WrongClockTests
{
    private static readonly Instant Morning = Instant.FromUtc(2026, 10, 4, 7, 30);

    [Fact]
    public async Task RunAsync_ClockSetTwoYearsAheadAndBack_HoldsTheNextMorningsRound()
    {
        Household household = Make.Household("UTC");
        var kitchen = new KitchenInMemory(household);
        kitchen.Jars.Add(Make.Jar(1));
        kitchen.Reach("Mira");
        RoundPass pass = kitchen.RoundPass();
        await pass.RunAsync(Morning - Duration.FromDays(1), default);
        await pass.RunAsync(Morning, default);
        await pass.RunAsync(Morning + Duration.FromDays(730), default);
        Assert.True(kitchen.Rounds.Count() > 700);

        Assert.Equal([new LocalDate(2026, 10, 5)], await pass.RunAsync(Morning + Duration.FromDays(1), default));
        Assert.Equal(new LocalDate(2026, 10, 5), kitchen.Rounds.Last().Date);
        Assert.False(kitchen.Rounds.Last().Missed);
    }

    [Fact]
    public async Task RunAsync_ClockBeforeTheHouseholdWasFounded_OpensAndTakesBackNothing()
    {
        Household household =
            new() { Id = Guid.CreateVersion7((Morning - Duration.FromDays(9)).ToDateTimeOffset()), Name = "Number Nine", TimeZoneId = "UTC" };
        var kitchen = new KitchenInMemory(household);
        kitchen.Jars.Add(Make.Jar(1));
        RoundPass pass = kitchen.RoundPass();
        await pass.RunAsync(Morning - Duration.FromDays(1), default);
        await pass.RunAsync(Morning, default);
        int before = kitchen.Rounds.Count();

        Assert.Empty(await pass.RunAsync(Instant.FromUtc(1970, 1, 1, 0, 3), default));
        Assert.Equal(before, kitchen.Rounds.Count());
    }

    [Theory]
    [InlineData(23, false)]
    [InlineData(25, true)]
    public async Task LookAsync_ClockFurtherAheadThanADay_IsAskedAbout(int hours, bool asked)
    {
        var watch = new ClockWatch();
        await watch.LookAsync(Morning + Duration.FromHours(hours), () => Task.FromResult<Instant?>(Morning));
        Assert.Equal(asked, watch.Question(DateTimeZone.Utc) is not null);
    }

    [Fact]
    public async Task LookAsync_ClockMendedOrConfirmedOrRightForTwoDays_AsksNoMore()
    {
        foreach (Action<ClockWatch> ends in new Action<ClockWatch>[]
        {
            watch => watch.LookAsync(Morning + Duration.FromMinutes(2), NoSign).GetAwaiter().GetResult(),
            watch => watch.Confirm(),
            watch => watch.LookAsync(Morning + Duration.FromDays(702.5), NoSign).GetAwaiter().GetResult(),
        })
        {
            var watch = new ClockWatch();
            await watch.LookAsync(Morning, NoSign);
            await watch.LookAsync(Morning + Duration.FromDays(700), NoSign);
            await watch.LookAsync(Morning + Duration.FromDays(700.9), NoSign);
            await watch.LookAsync(Morning + Duration.FromDays(701.8), NoSign);
            Assert.StartsWith("This machine's clock says 5 September 2028, 02:42; the last sign of life before was on 4 October 2026, 07:30.",
                watch.Question(DateTimeZone.Utc), StringComparison.Ordinal);
            ends(watch);
            Assert.Null(watch.Question(DateTimeZone.Utc));
        }
    }

    private static Task<Instant?> NoSign() => Task.FromResult<Instant?>(null);
}
