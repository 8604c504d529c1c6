using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Occasions;
using FermentWatch.Kitchen.Tests.Doubles;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Occasions;

public class WarmthOccasionsTests
{
    [Theory]
    [InlineData(24.5, 48, OccasionKind.TooWarm)]
    [InlineData(24.5, 47, null)]
    [InlineData(27, 24, OccasionKind.FarTooWarm)]
    [InlineData(27, 23, null)]
    [InlineData(14, 96, OccasionKind.TooCold)]
    [InlineData(14, 95, null)]
    [InlineData(23.9, 200, null)]
    public async Task Of_SoManyQuarterHours_IsToldFromItsOwnLengthOn(double celsius, int quarters, OccasionKind? expected) =>
        Assert.Equal(expected is { } kind ? [kind]
            : [], (await OnDayThreeAsync([.. Enumerable.Repeat(20.0, 20), .. Enumerable.Repeat(celsius, quarters)])).Select(each => each.Kind));

    [Fact]
    public async Task Of_AWindowOpenedForAnHour_DoesNotEndTheSpell() =>
        Assert.Equal([OccasionKind.TooWarm],
        (await OnDayThreeAsync([.. Enumerable.Repeat(25.0, 30), 20, 20, 20, 20, .. Enumerable.Repeat(25.0, 20)])).Select(each => each.Kind));

    [Fact]
    public async Task Of_CoolAgainForLongerThanAnHour_IsOver() =>
        Assert.Empty(await OnDayThreeAsync([.. Enumerable.Repeat(25.0, 60), 20, 20, 20, 20, 20]));

    [Fact]
    public async Task Of_ColdPlaceWithMeasuredJars_IsNotTold() =>
        Assert.Empty(await OnDayThreeAsync([.. Enumerable.Repeat(12.0, 200)], Make.Ph(4.1, PhMethod.Meter, 2)));

    [Theory]
    [InlineData(35, 4, "Hot, Counter")]
    [InlineData(35, 3, null)]
    [InlineData(34.9, 24, "Far too warm, Counter")]
    public async Task Of_RoomOf35AndAbove_IsToldAfterAnHour(double celsius, int quarters, string? headline) =>
        Assert.Equal(headline is null ? [] : [headline],
        (await OnDayThreeAsync([.. Enumerable.Repeat(22.0, 100), .. Enumerable.Repeat(celsius, quarters)])).Select(each => each.Headline));

    [Theory]
    [InlineData("cabbage", "They may hardly ferment.")]
    [InlineData("napa", "Napa and daikon go on there, slowly.")]
    public async Task Of_ColdPlace_SaysOfNapaThatItGoesOn(string produce, string expected)
    {
        Instant now = (Make.Packed.InUtc().Date.PlusDays(3) + FactsOf.Evening).InUtc().ToInstant();
        Jar jar = Make.Jar(1);
        jar.Portions = [new Portion(produce, 0.8)];
        OccasionFacts facts =
            FactsOf.Day(3, FactsOf.Evening, [jar], temperatures: await FactsOf.TemperaturesAsync(now, [.. Enumerable.Repeat(12.0, 200)]));
        Assert.Contains(expected, Assert.Single(WarmthOccasions.Of(facts)).Body, StringComparison.Ordinal);
    }

    private static async Task<IEnumerable<Occasion>> OnDayThreeAsync(double[] quarters, params Observation[] seen)
    {
        Instant now = (Make.Packed.InUtc().Date.PlusDays(3) + FactsOf.Evening).InUtc().ToInstant();
        return WarmthOccasions.Of(
            FactsOf.Day(3, FactsOf.Evening, [Make.Jar(1, seen: seen)], temperatures: await FactsOf.TemperaturesAsync(now, quarters)));
    }
}
